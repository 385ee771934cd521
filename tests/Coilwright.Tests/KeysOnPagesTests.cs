using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Coilwright.Application.Composition;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Wire;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Tests.Commands;
using Coilwright.Web;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Tests;

/// <summary>Whoever walks through the demo shop reads no key of the file formats, on no page and in no field.</summary>
public sealed partial class KeysOnPagesTests
{
    /// <summary>Pages of one kind that are looked at; the rest are alike.</summary>
    private const int OfAKind = 4;

    private static readonly Lazy<Regex> s_keys = new(() =>
        new Regex(@"(?<![\w-])(" + string.Join('|', HyphenedKeys().Select(Regex.Escape)) + @")(?![\w-])")
    );

    /// <summary>Pages of help that name outside programs, their tests and files, as those are called.</summary>
    private static readonly string[] s_ofOutside = ["/help/evidence", "/help/sources"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_page_of_the_demo_shop_shows_a_key()
    {
        using TestFolder folder = new();
        string file = folder.PathOf("demo.db");
        CommandRun made = await CommandRun.Of("demo", "--no-serve", "--shop", file);
        Assert.True(made.Exit == 0, made.Error);
        await using ShopRecords records = await ShopFile.OpenAsync(file, Cancel);
        await using WebApplication app = WebHost.Build(["http://127.0.0.1:0"], records, TimeProvider.System);
        ShopServices shop = app.Services.GetRequiredService<ShopServices>();
        await app.StartAsync(Cancel);
        using HttpClient client = new() { BaseAddress = new Uri(app.Urls.Single()), Timeout = TimeSpan.FromMinutes(5) };

        Guid recipe = (await shop.Recipes.ListAsync(Cancel))[0].RecipeId;
        Dictionary<string, string> pages = await WalkAsync(client, [.. Asked(recipe)]);
        pages["a form that is refused"] = await RefusedAsync(client, recipe);
        Assert.Contains("Coil 1, wire, insulation", pages["a form that is refused"], StringComparison.Ordinal);

        Assert.True(pages.Count > 60, $"only {pages.Count} pages");
        string[] shown = [.. pages.SelectMany(page => Keys(page.Value).Select(key => $"{page.Key}: {About(key, Visible(page.Value))}"))];
        Assert.True(shown.Length == 0, string.Join('\n', shown));
    }

    /// <summary>Proof that the guard sees a key where a person would, and there alone.</summary>
    [Theory]
    [InlineData("<p>wound with plain-enamel</p>", "plain-enamel")]
    [InlineData("<p>coils[0].winding.turns: many</p>", "coils[0]")]
    [InlineData("<input value=\"nickel-silver\">", "nickel-silver")]
    [InlineData("<input placeholder=\"north-up\">", "north-up")]
    [InlineData("<datalist><option value=\"alnico-5\"></datalist>", "alnico-5")]
    [InlineData("<p>dcResistance at 20 °C</p>", "dcResistance")]
    [InlineData("<p><code>dcResistance</code></p>", "dcResistance")]
    [InlineData("<article class=\"help\"><p><code>dcResistance</code></p></article>", null)]
    [InlineData("<article class=\"help\"><p>dcResistance</p></article>", "dcResistance")]
    [InlineData("<p><code class=\"path\">/tmp/shop-aBc/backups</code> dcResistance</p>", "dcResistance")]
    [InlineData("<select><option value=\"north-up\">north up</option></select>", null)]
    [InlineData("<input type=\"hidden\" value=\"plain-enamel\"><input type=\"checkbox\" value=\"dcResistance\">", null)]
    [InlineData("<p data-key=\"dcResistance\">plain enamel, set-up, counter-clockwise, 5.2 kHz, mH, H-12</p>", null)]
    public void A_key_is_seen_where_it_is_read(string html, string? key) => Assert.Equal(key is null ? [] : [key], Keys(html));

    private static IEnumerable<string> Asked(Guid recipe) =>
        [
            "/",
            "/recipes",
            "/spools",
            "/machines",
            "/charts",
            "/compare",
            "/assembly",
            "/sets",
            "/clocks",
            "/test",
            "/pieces",
            "/shop",
            "/shop/rules",
            "/shop/files",
            "/shop/backups",
            "/magnets",
            "/magnets?show=M-5",
            "/batches?state=closed",
            "/measure",
            "/measure/resonance?peaks[0].frequency=9.19&peaks[1].frequency=4.14&peaks[1].capacitor=470&inductance=2.53",
            "/measure/curve",
            "/measure/sweep",
            "/measure/gauge",
            "/measure/sample?lot=500&aql=1&level=II",
            "/batches",
            "/machines/new",
            "/recipes/new",
            "/recipes/new?shape=bass-rows",
            "/find?code=H-001",
            "/find?code=nothing",
            "/recall?code=0117&kind=spool",
            "/help",
            "/help?q=pot+life",
            "/labels",
            "/labels?kind=spool&name=0117&size=50x25",
            "/no-such-page",
            $"/compare?design0={recipe}",
            $"/recipes/{recipe}/solve?want=dcResistance%3D8.2k%CE%A9&vary=turns,gauge",
            $"/recipes/{recipe}/spread",
            $"/recipes/{recipe}/hold?ohmPerM=5.6",
            $"/recipes/{recipe}/hold?ohmPerM=x",
            $"/recipes/{recipe}/variants?ask=longerCore",
            $"/recipes/{recipe}/variants?ask=cover",
            $"/recipes/{recipe}/batches/new",
            $"/recipes/{recipe}/sensitivity",
            $"/recipes/{recipe}/solve?want=loudness%3D3&vary=wood",
            $"/recipes/{recipe}/solve?want=output%3Dmax&vary=magnet%3Dchalk",
            $"/recipes/{recipe}/variants?ask=cover&value=alnico%205",
        ];

    private static async Task<string> RefusedAsync(HttpClient client, Guid recipe)
    {
        using FormUrlEncodedContent form = new([
            new("base", "1"),
            new("coils[0].wire.insulation", "heavy shellac"),
            new("coils[0].winding.turns", "1e9"),
            new("magnets[0].material", "chalk"),
        ]);
        using HttpResponseMessage answer = await client.PostAsync(new Uri($"/recipes/{recipe}/preview", UriKind.Relative), form, Cancel);
        return await answer.Content.ReadAsStringAsync(Cancel);
    }

    private static async Task<Dictionary<string, string>> WalkAsync(HttpClient client, string[] from)
    {
        Dictionary<string, string> pages = new(StringComparer.Ordinal);
        Dictionary<string, int> kinds = new(StringComparer.Ordinal);
        Queue<string> next = new(from);
        while (next.TryDequeue(out string? address))
        {
            string kind = Place().Replace(address.Split('?')[0], "/*");
            if (
                s_ofOutside.Any(start => address.StartsWith(start, StringComparison.Ordinal))
                || pages.ContainsKey(address)
                || kinds.GetValueOrDefault(kind) >= (from.Contains(address) ? int.MaxValue : OfAKind)
            )
            {
                continue;
            }

            kinds[kind] = kinds.GetValueOrDefault(kind) + 1;
            pages[address] = await TextAsync(client, address);
            foreach (Match link in Link().Matches(pages[address]))
            {
                next.Enqueue(WebUtility.HtmlDecode(link.Groups[1].Value));
            }
        }

        return pages;
    }

    /// <summary>A page, when a search in the background is done.</summary>
    private static async Task<string> TextAsync(HttpClient client, string address)
    {
        while (true)
        {
            using HttpResponseMessage answer = await client.GetAsync(new Uri(address, UriKind.Relative), Cancel);
            string text =
                answer.Content.Headers.ContentType?.MediaType == "text/html" ? await answer.Content.ReadAsStringAsync(Cancel) : "";
            if (!text.Contains("http-equiv=\"refresh\"", StringComparison.Ordinal))
            {
                return text;
            }

            await Task.Delay(200, Cancel);
        }
    }

    private static string[] Keys(string html)
    {
        string visible = Visible(html);
        return
        [
            .. s_keys
                .Value.Matches(visible)
                .Concat(Camel().Matches(visible))
                .Concat(Indexed().Matches(visible))
                .Select(match => match.Value)
                .Distinct(),
        ];
    }

    /// <summary>A key with what stands about it, so that it is found.</summary>
    private static string About(string key, string visible)
    {
        int at = visible.IndexOf(key, StringComparison.Ordinal),
            from = Math.Max(0, at - 60);
        return Regex.Replace(visible[from..Math.Min(visible.Length, at + key.Length + 30)], "\\s+", " ");
    }

    /// <summary>
    /// What a person reads: text, and the fields' values and hints; neither documents to be typed as a whole nor what forms carry unseen.
    /// </summary>
    private static string Visible(string html)
    {
        string shown = Unseen().Replace(Paths(ToBeTyped(html)), " ");
        shown = Regex.Replace(
            shown,
            "<datalist.*?</datalist>",
            list => list.Value.Replace("<option ", "<input ", StringComparison.Ordinal),
            RegexOptions.Singleline
        );
        IEnumerable<string> fields = Field()
            .Matches(shown)
            .Select(field => field.Value)
            .Where(field => !CarriedUnseen().IsMatch(field))
            .SelectMany(field => Said().Matches(field).Select(said => said.Groups[1].Value));
        IEnumerable<string> names = Regex.Matches(shown, "(?:aria-label|alt|title)=\"([^\"]*)\"").Select(name => name.Groups[1].Value);
        return WebUtility.HtmlDecode(Regex.Replace(shown, "<[^>]+>", " ") + " " + string.Join(' ', fields.Concat(names)));
    }

    /// <summary>Files and folders of this computer, as they are called.</summary>
    private static string Paths(string html) => Regex.Replace(html, "<code class=\"path\">.*?</code>", " ", RegexOptions.Singleline);

    /// <summary>What help sets as code is there to be typed as it is, on the command line or into a file.</summary>
    private static string ToBeTyped(string html) =>
        html.Contains("<article class=\"help\">", StringComparison.Ordinal)
            ? Regex.Replace(html, "<code>.*?</code>", " ", RegexOptions.Singleline)
            : html;

    /// <summary>Words of the formats that are joined by hyphens and read otherwise by people.</summary>
    private static IEnumerable<string> HyphenedKeys() =>
        Directory
            .GetFiles(RepositoryFiles.PathOf("schemas"), "*.json")
            .SelectMany(file =>
            {
                using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(file));
                return WordsOf(schema.RootElement).ToArray();
            })
            .Concat(MaterialCatalogue.All.Select(material => material.Key))
            .Concat(WireCatalogue.Standard.Insulations.Select(enamel => enamel.Key))
            .Where(word => Hyphened().IsMatch(word) && KeyLabels.Of(word) != word)
            .Distinct()
            .OrderByDescending(word => word.Length);

    private static IEnumerable<string> WordsOf(JsonElement node) =>
        node.ValueKind switch
        {
            JsonValueKind.Object => node.EnumerateObject().SelectMany(one => WordsOf(one.Value).Append(one.Name)),
            JsonValueKind.Array => node.EnumerateArray().SelectMany(WordsOf),
            JsonValueKind.String => [node.GetString()!],
            _ => [],
        };

    [GeneratedRegex("^[a-z]+(-[a-z0-9]+)+$")]
    private static partial Regex Hyphened();

    [GeneratedRegex("\\b[a-z]{2,}[A-Z][a-zA-Z]*\\b")]
    private static partial Regex Camel();

    [GeneratedRegex("\\w+\\[\\d+\\]")]
    private static partial Regex Indexed();

    [GeneratedRegex("<(script|style|textarea)\\b.*?</\\1>|<!--.*?-->", RegexOptions.Singleline)]
    private static partial Regex Unseen();

    [GeneratedRegex("<input\\b[^>]*>")]
    private static partial Regex Field();

    [GeneratedRegex("type=\"(hidden|checkbox|radio)\"")]
    private static partial Regex CarriedUnseen();

    [GeneratedRegex("(?<![\\w-])(?:value|placeholder)=\"([^\"]*)\"")]
    private static partial Regex Said();

    [GeneratedRegex("href=\"(/(?!built|api)[^\"#]*)")]
    private static partial Regex Link();

    [GeneratedRegex("/([0-9a-f]{8}-[^/]*|[^/]*\\d[^/]*)")]
    private static partial Regex Place();
}
