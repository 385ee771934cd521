using System.Net;
using System.Text.RegularExpressions;
using Coilwright.Application.Forecasts;
using Coilwright.Formats.Forecasts;
using Coilwright.Web;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.People;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Secrets;
using Microsoft.AspNetCore.Builder;

namespace Coilwright.Application.Tests;

/// <summary>
/// What of a secret recipe reaches those without the right to it: every address that the pages lead to is asked as a winder, a tester and
/// the office, and what comes is searched for the figures that give the recipe away.
/// </summary>
public sealed partial class SecretRecipeTests
{
    private const string Password = "tar and feathers 7";

    private static readonly string[] s_secret = ["Sandbar wide", "Breakwater twin"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_page_paper_chart_or_list_gives_a_secret_recipe_away()
    {
        await using DemoShop demo = await DemoShop.MakeAsync();
        await using WebApplication app = WebHost.Build(["http://127.0.0.1:0"], demo.Opened.Records, TimeProvider.System);
        await app.StartAsync(Cancel);
        Uri url = new(app.Urls.Single());
        foreach (Role role in RoleRights.OfPeople.Reverse())
        {
            Assert.Empty(
                (
                    await demo.Opened.Use<AccountService>().InviteAsync(role.ToString(), RoleRights.Word(role), Password, false, "", Cancel)
                ).Problems
            );
        }

        IReadOnlyList<RevisionRecord> all = await demo.Opened.Records.Recipes.NewestAsync(Cancel);
        RevisionRecord[] secret = [.. all.Where(one => s_secret.Contains(one.RecipeName))];
        Assert.Equal(s_secret.Length, secret.Length);
        Dictionary<string, string> figures = await FiguresAsync(demo, secret);
        using HttpClient engineer = await BrowserAsync(demo, url, Role.Engineer);
        Dictionary<string, string> open = await CrawlAsync(engineer, secret);
        // The search finds what is there.
        Assert.All(figures, figure => Assert.Contains(open.Values, page => Found(page, figure.Value).Success));

        foreach (RevisionRecord recipe in secret)
        {
            await demo.Opened.Use<SecretRecipeService>().MarkAsync(Guid.NewGuid(), recipe.RecipeId, true, "", "Owner", Cancel);
        }

        List<string> found = [];
        foreach (Role role in (Role[])[Role.Winder, Role.Tester, Role.Office])
        {
            using HttpClient browser = await BrowserAsync(demo, url, role);
            Dictionary<string, string> seen = await CrawlAsync(browser, secret);
            Assert.InRange(seen.Count, 60, 3000);
            found.AddRange(
                from page in seen
                where !IsSet(page.Key)
                from figure in figures
                let there = Found(page.Value, figure.Value)
                where there.Success
                select $"{role} {page.Key}: {figure.Key}: …{page.Value[Math.Max(0, there.Index - 60)..(there.Index + there.Length)]}…"
            );
        }

        Assert.Empty(found);
        using HttpClient winder = await BrowserAsync(demo, url, Role.Winder);
        await LooksAsync(demo, winder, secret);
    }

    /// <summary>At the winder what must be set is seen, and that it was seen is kept; with the batch it ends.</summary>
    private static async Task LooksAsync(DemoShop demo, HttpClient winder, RevisionRecord[] secret)
    {
        IReadOnlyList<BatchRecord> batches = await demo.Opened.Records.Batches.AllAsync(Cancel);
        BatchRecord running = batches.First(batch => batch.Name == "S-4"),
            done = batches.First(batch => batch.Name == "B-5");
        Assert.Contains(secret, recipe => recipe.RecipeId == running.RecipeId);
        int before = await SeenAsync(demo);
        string page = await TextAsync(winder, $"/batches/{running.Id}/wind");
        Assert.Contains("id=\"stop\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("real turns", page, StringComparison.Ordinal);
        string sheet = await TextAsync(winder, $"/batches/{running.Id}/setup");
        Assert.Contains("Counter stop", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("A coil takes", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("If the wire breaks", sheet, StringComparison.Ordinal);
        Assert.Equal(before + 2, await SeenAsync(demo));
        foreach (
            string refused in (string[])[$"/batches/{done.Id}/wind", $"/batches/{running.Id}", $"/recipes/{running.RecipeId}", "/charts"]
        )
        {
            using HttpResponseMessage answer = await winder.GetAsync(new Uri(refused, UriKind.Relative), Cancel);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
    }

    private static async Task<int> SeenAsync(DemoShop demo) =>
        (await demo.Opened.Use<IPeopleRecords>().EventsAsync(10_000, Cancel)).Count(one => one.Act == AccountAct.SecretSeen);

    /// <summary>What must be set at the winder is shown there: the counter's stop is the turns where the counter is true.</summary>
    private static bool IsSet(string address) => WinderPage().IsMatch(address);

    /// <summary>Turns, wire and forecasts of each coil, as pages write them.</summary>
    private static async Task<Dictionary<string, string>> FiguresAsync(DemoShop demo, RevisionRecord[] secret)
    {
        Dictionary<string, string> figures = [];
        foreach (RevisionRecord recipe in secret)
        {
            RecipeForecast forecast = demo.Opened.Use<ForecastRecipe>().Forecast(recipe.Json, null, KnownParts.None);
            using System.Text.Json.JsonDocument prediction = System.Text.Json.JsonDocument.Parse(
                PredictionJson.Write(forecast.Prediction!)
            );
            System.Text.Json.JsonElement coil = prediction.RootElement.GetProperty("coils")[0];
            double metres = coil.GetProperty("wireLength").GetProperty("value").GetDouble();
            double turns = RecipeReader.Read(recipe.Json).Value!.Coils[0].Winding.Turns;
            figures[recipe.RecipeName + " turns"] = turns.ToString("#,##0", System.Globalization.CultureInfo.InvariantCulture);
            figures[recipe.RecipeName + " wire"] = metres.ToString("#,##0 'm'", System.Globalization.CultureInfo.InvariantCulture);
        }

        await Task.CompletedTask;
        return figures;
    }

    /// <summary>Thousands are parted by a comma or a narrow space.</summary>
    private static Match Found(string page, string figure)
    {
        string loose = Regex
            .Escape(figure)
            .Replace(",", "[,\u202F\u00A0]?", StringComparison.Ordinal)
            .Replace("\\ ", "[ \u202F\u00A0]", StringComparison.Ordinal);
        return Regex.Match(page, $@"(?<![\d.,]){loose}(?!\d)");
    }

    private static async Task<HttpClient> BrowserAsync(DemoShop demo, Uri url, Role role)
    {
        KeyOutcome signed = await demo.Opened.Use<SignInService>().SignInAsync(role.ToString(), Password, "test", Cancel);
#pragma warning disable CA2000 // closed with the browser
        HttpClient browser = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = url };
#pragma warning restore CA2000
        browser.DefaultRequestHeaders.Add("Cookie", "coilwright-session=" + signed.Key);
        return browser;
    }

    private static async Task<string> TextAsync(HttpClient browser, string address)
    {
        using HttpResponseMessage answer = await browser.GetAsync(new Uri(address, UriKind.Relative), Cancel);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Cancel);
    }

    /// <summary>Every page, table and drawing that the pages lead to, and the secret recipes' own addresses.</summary>
    private static async Task<Dictionary<string, string>> CrawlAsync(HttpClient browser, RevisionRecord[] secret)
    {
        Dictionary<string, string> seen = [];
        HashSet<string> asked = [];
        Queue<string> next = new([
            "/",
            "/batches",
            "/recipes",
            "/pieces",
            "/spools",
            "/machines",
            "/charts",
            "/assembly",
            "/sets",
            "/clocks",
            "/magnets",
            "/test",
            "/labels",
            "/charts/coils.csv",
            "/find?code=S-4",
            "/recall?code=0117&kind=spool",
            .. secret.SelectMany(one => (string[])[$"/recipes/{one.RecipeId}", $"/charts?recipe={one.RecipeId}"]),
        ]);
        while (next.TryDequeue(out string? address))
        {
            if (!asked.Add(address) || asked.Count > 3000 || Skipped().IsMatch(address))
            {
                continue;
            }

            using HttpResponseMessage answer = await browser.GetAsync(new Uri(address, UriKind.Relative), Cancel);
            string type = answer.Content.Headers.ContentType?.MediaType ?? "";
            if (
                answer.StatusCode != HttpStatusCode.OK
                || !(type.StartsWith("text/", StringComparison.Ordinal) || type.Contains("svg", StringComparison.Ordinal))
            )
            {
                continue;
            }

            string text = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
            seen[address] = text;
            foreach (Match link in Link().Matches(text))
            {
                next.Enqueue(link.Groups[1].Value);
            }
        }

        return seen;
    }

    [GeneratedRegex(@"(?:href|src)=""(/[^""#]*)")]
    private static partial Regex Link();

    [GeneratedRegex(@"^/(built|help|measure)|\.pdf|[?&](size|sheet)=")]
    private static partial Regex Skipped();

    [GeneratedRegex(@"^/batches/[^/]+/(wind|setup)")]
    private static partial Regex WinderPage();
}
