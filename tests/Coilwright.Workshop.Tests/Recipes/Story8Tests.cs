using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Tests.Winding;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>Will it fit, how thick, how heavy: 8,000 and 9,400 turns of 0.071 mm overall in a window of 11 × 4.3 mm.</summary>
public class Story8Tests
{
    private const string Limited = "\"maxBuild\": \"4.3 mm\", \"fillLimit\": 0.74";

    [Fact]
    public void Story_8_eight_thousand_turns_fill_two_thirds_of_the_window_and_fit()
    {
        (Prediction prediction, WindingSetUp setUp) = Forecast(
            WorkingShop.Harbour(8000).Replace("\"maxBuild\": \"4.3 mm\"", Limited, StringComparison.Ordinal)
        );
        Assert.Equal(0.67, prediction.Coils[0].Fill!.Value, 0.005);
        Assert.True(setUp.Fits);
        Assert.StartsWith("fits", setUp.Coils[0].Fill.Words, StringComparison.Ordinal);
        Assert.Empty(prediction.Warnings);
    }

    [Fact]
    public void Story_8_nine_thousand_four_hundred_turns_are_over_the_shops_own_limit()
    {
        (Prediction prediction, WindingSetUp setUp) = Forecast(
            WorkingShop.Harbour(9400).Replace("\"maxBuild\": \"4.3 mm\"", Limited, StringComparison.Ordinal)
        );
        Assert.Equal(0.79, prediction.Coils[0].Fill!.Value, 0.005);
        Assert.False(setUp.Fits);
        ForecastWarning warning = Assert.Single(prediction.Warnings, one => one.Message.Contains("limit", StringComparison.Ordinal));
        Assert.Equal("coils[0].winding.turns", warning.Field);
        Assert.StartsWith("fill 0.79 is over your own limit of 0.74 for this bobbin", warning.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// 1,136 m at the 29.8 mg/m of half a pound to 25,000 ft (read) are 33.9 g; that wire has more enamel than single build, which weighs
    /// 33.1 g.
    /// </summary>
    [Fact]
    public void Story_8_the_wire_is_1136_m_and_about_34_g()
    {
        string recipe = WorkingShop
            .Harbour(8000)
            .Replace("\"coreLength\": \"61 mm\"", "\"coreLength\": \"64.2 mm\"", StringComparison.Ordinal);
        CoilForecast single = Forecast(recipe).Prediction.Coils[0];
        CoilForecast heavy = Forecast(
            recipe.Replace("\"build\": \"single\"", "\"build\": \"heavy\"", StringComparison.Ordinal)
        ).Prediction.Coils[0];
        Assert.True(single.WireMass.Estimate.Low < 0.034 && single.WireMass.Estimate.High > 0.034);
        Assert.Equal(29.8e-6, heavy.WireMass.Value / heavy.WireLength.Value, 0.5e-6);
    }

    [Fact]
    public async Task A_limit_stated_in_one_recipe_holds_for_another_on_the_same_bobbin()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        await shop.ReleasedAsync(WorkingShop.Harbour(8000).Replace("\"maxBuild\": \"4.3 mm\"", Limited, StringComparison.Ordinal));
        KnownParts parts = await shop.Book.KnownPartsAsync(WorkingShop.Cancel);
        Recipe other = RecipeReader.Read(WorkingShop.Harbour(9400, "Another")).Value!;
        Assert.Equal(0.74, parts.Fill(other).Coils[0].Bobbin.FillLimit);
        Recipe wider = RecipeReader
            .Read(
                WorkingShop
                    .Harbour(9400, "Wider")
                    .Replace("\"coreWidth\": \"6.2 mm\"", "\"coreWidth\": \"6.4 mm\"", StringComparison.Ordinal)
            )
            .Value!;
        Assert.Null(parts.Fill(wider).Coils[0].Bobbin.FillLimit);
        Recipe own = RecipeReader
            .Read(
                WorkingShop
                    .Harbour(9400, "Own")
                    .Replace("\"maxBuild\": \"4.3 mm\"", "\"maxBuild\": \"4.3 mm\", \"fillLimit\": 0.7", StringComparison.Ordinal)
            )
            .Value!;
        Assert.Equal(0.7, parts.Fill(own).Coils[0].Bobbin.FillLimit);
    }

    private static (Prediction Prediction, WindingSetUp SetUp) Forecast(string json)
    {
        Recipe recipe = RecipeReader.Read(json).Value!;
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        Prediction prediction = Forecaster.Predict(model, load: null, cancel: TestContext.Current.CancellationToken);
        return (prediction, WindingSetUp.For(recipe, model, prediction, roomC: 20));
    }
}
