using System.Globalization;
using System.Net;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Fields;
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
        RevisionRecord revision = await shop.ReleasedAsync(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", file), Cancel));
        string page = $"/recipes/{revision.RecipeId}";
        await TextAsync(shop, page);

        PickupModel model = RecipeModelBuilder.ToModel(RecipeReader.Read(revision.Json).Value!);
        PickupForecast fast = Forecaster.Predict(model, null, cancel: Cancel).Pickup;
        PickupForecast accurate = Forecaster.Predict(model, null, new ForecastOptions { Engine = new AccurateFieldEngine() }, Cancel).Pickup;
        Assert.InRange(accurate.Inductance.Value, fast.Inductance.Estimate.Low, fast.Inductance.Estimate.High);
        Assert.InRange(accurate.UnloadedResonance!.Frequency.Value, fast.UnloadedResonance!.Frequency.Estimate.Low, fast.UnloadedResonance.Frequency.Estimate.High);
        string shown = Henry(fast), other = Henry(accurate);
        Assert.NotEqual(other, shown); // else the pages could not be told apart

        foreach (string address in new[] { page, "/compare", $"{page}/hold", $"{page}/variants?ask=longerCore", $"{page}/spread" })
        {
            string text = await TextAsync(shop, address);
            Assert.True(text.Contains(shown, StringComparison.Ordinal), $"{address} does not show {shown}");
            Assert.False(text.Contains(other + " H", StringComparison.Ordinal), $"{address} shows {other} of the accurate engine");
        }
    }

    private static async Task<string> TextAsync(PagesOfShop shop, string address) => WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));

    private static string Henry(PickupForecast pickup) => pickup.Inductance.Value.ToString("0.00", CultureInfo.InvariantCulture);
}
