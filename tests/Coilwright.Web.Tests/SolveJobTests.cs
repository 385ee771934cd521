using System.Diagnostics;
using System.Net;

namespace Coilwright.Web.Tests;

/// <summary>A long search shows how far it is, can be stopped, and leaves the other pages quick.</summary>
public sealed class SolveJobTests
{
    private const string Long = "want=dcResistance%3D8.2k%CE%A9&vary=turns,gauge,windingHeight,coreWidth";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_long_search_tells_how_far_it_is_and_is_stopped()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid id = Guid.NewGuid();
        string recipe = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "breakwater-twin.json"), Cancel);
        Assert.Empty((await shop.Services.Recipes.SaveAsync(id, recipe, "", "Joss", 0, Cancel)).Problems);

        long began = Stopwatch.GetTimestamp();
        string page = await shop.Client.GetStringAsync(new Uri($"/recipes/{id}/solve?{Long}", UriKind.Relative), Cancel);
        Assert.Contains("<progress", page, StringComparison.Ordinal);
        Assert.Contains("http-equiv=\"refresh\"", page, StringComparison.Ordinal);
        Assert.Contains("Stop, and show what was found", page, StringComparison.Ordinal);
        // the search itself takes longer on this recipe
        Assert.InRange(Stopwatch.GetElapsedTime(began), TimeSpan.FromSeconds(0.9), TimeSpan.FromSeconds(20));
        Assert.Equal(HttpStatusCode.OK, (await shop.Client.GetAsync(new Uri("/spools", UriKind.Relative), Cancel)).StatusCode);

        using FormUrlEncodedContent stop = KnownHostsTests.Form(
            ("want", "dcResistance=8.2kΩ"),
            ("vary", "turns,gauge,windingHeight,coreWidth")
        );
        using HttpResponseMessage stopped = await shop.Client.PostAsync(
            new Uri($"/recipes/{id}/solve/stop", UriKind.Relative),
            stop,
            Cancel
        );
        Assert.Equal(HttpStatusCode.Found, stopped.StatusCode);
        string answer = page;
        for (int at = 0; at < 60 && answer.Contains("<progress", StringComparison.Ordinal); at++)
        {
            using HttpResponseMessage now = await shop.Client.GetAsync(new Uri($"/recipes/{id}/solve?{Long}", UriKind.Relative), Cancel);
            answer = await now.Content.ReadAsStringAsync(Cancel);
        }

        Assert.DoesNotContain("<progress", answer, StringComparison.Ordinal);
        Assert.True(
            answer.Contains("Search to the end", StringComparison.Ordinal)
                || answer.Contains("stopped before anything was found", StringComparison.Ordinal)
        );
    }
}
