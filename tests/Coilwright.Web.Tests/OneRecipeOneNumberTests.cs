using System.Globalization;
using System.Net;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Web.Forms;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>A recipe has one forecast: the same figures stand on every page and in the program's answers.</summary>
public sealed class OneRecipeOneNumberTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("sandbar-wide.json")]
    [InlineData("breakwater-twin.json")]
    public async Task The_pages_show_the_figures_of_the_program_and_their_intervals_hold_the_accurate_ones(string file)
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync(
            await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", file), Cancel)
        );
        string page = $"/recipes/{revision.RecipeId}";
        await TextAsync(shop, page);

        PickupModel model = RecipeModelBuilder.ToModel(RecipeReader.Read(revision.Json).Value!);
        PickupForecast fast = Forecaster.Predict(model, null, cancel: Cancel).Pickup;
        PickupForecast accurate = Forecaster
            .Predict(model, null, new ForecastOptions { Engine = new AccurateFieldEngine() }, Cancel)
            .Pickup;
        Assert.InRange(accurate.Inductance.Value, fast.Inductance.Estimate.Low, fast.Inductance.Estimate.High);
        Assert.InRange(
            accurate.UnloadedResonance!.Frequency.Value,
            fast.UnloadedResonance!.Frequency.Estimate.Low,
            fast.UnloadedResonance.Frequency.Estimate.High
        );
        string load = LoadForm.Default().ToJsonString();
        PickupForecast loaded = Forecaster.Predict(model, LoadReader.Read(load).Value, cancel: Cancel).Pickup;
        PickupForecast other = Forecaster
            .Predict(
                model,
                LoadReader.Read(load).Value,
                new ForecastOptions { Engine = new AccurateFieldEngine(), FrequenciesHz = ForecastBranch.FrequenciesHz },
                Cancel
            )
            .Pickup;
        Assert.NotEqual(Henry(other), Henry(loaded)); // else the pages could not be told apart
        foreach (
            (string address, string shown) in new[]
            {
                (page, Henry(loaded)),
                (page, Kilohertz(loaded)),
                ("/compare", Kilohertz(loaded)),
                ($"{page}/variants?ask=longerCore", Henry(loaded)),
            }
        )
        {
            string text = await TextAsync(shop, address);
            Assert.True(text.Contains(shown, StringComparison.Ordinal), $"{address} does not show {shown}");
        }

        string recipePage = await TextAsync(shop, page); // by now a correction made in the background would be there
        Assert.False(
            recipePage.Contains(Henry(other), StringComparison.Ordinal),
            $"the recipe page shows {Henry(other)} of the accurate engine"
        );

        // Frequencies that are asked for beside move nothing.
        PickupForecast more = Forecaster
            .Predict(model, LoadReader.Read(load).Value, new ForecastOptions { FrequenciesHz = ForecastBranch.FrequenciesHz }, Cancel)
            .Pickup;
        Assert.Equal(loaded.LoadedResonance!.Frequency.Value, more.LoadedResonance!.Frequency.Value);
    }

    private static async Task<string> TextAsync(PagesOfShop shop, string address) =>
        WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));

    private static string Henry(PickupForecast pickup) => pickup.Inductance.Value.ToString("0.00", CultureInfo.InvariantCulture) + " H";

    private static string Kilohertz(PickupForecast pickup) =>
        (pickup.LoadedResonance!.Frequency.Value / 1000).ToString("0.00", CultureInfo.InvariantCulture) + " kHz";
}
