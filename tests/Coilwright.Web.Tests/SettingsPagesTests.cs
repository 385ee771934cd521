using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Rules;

namespace Coilwright.Web.Tests;

/// <summary>Rules, winders and files by their pages: a mistake stands on top and beside its field, and what was typed stays.</summary>
public sealed class SettingsPagesTests
{
    private const string Recipe = """
        {"format":"coilwright.recipe/1","name":"Pier","coils":[{"name":"main","bobbin":{"coreLength":"64 mm","coreWidth":"6 mm",
         "windingHeight":"11 mm"},"wire":{"gauge":"AWG 42"},"winding":{"turns":8000}}]}
        """;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_wrong_rule_is_told_twice_keeps_what_was_typed_and_changes_nothing()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        (HttpStatusCode status, string page) = await PostAsync(
            shop,
            "/shop/rules/form",
            ("ink.potLife", "10"),
            ("gaussSpread", "many"),
            ("bathLimits[0].material", "ABS"),
            ("bathLimits[0].limit", ""),
            ("bathLimits[1].material", "acetal"),
            ("bathLimits[1].limit", "300"),
            ("testNeeds", "inductance")
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal(3, Regex.Count(page, "<span class=\"problem\" role=\"alert\">"));
        Assert.Equal(3, Regex.Count(Regex.Match(page, "<ul class=\"problems\".*?</ul>", RegexOptions.Singleline).Value, "<li>"));
        Assert.All(["\"many\"", "\"10 h\"", "\"300 °C\"", "\"acetal\""], typed =>
            Assert.Contains("value=" + typed, page, StringComparison.Ordinal)
        );
        Assert.Matches("value=\"inductance\" checked", page);
        Assert.DoesNotMatch("value=\"dcResistance\" checked", page);
        Assert.Null(await shop.Records.Rules.NewestAsync(Cancel));
    }

    [Fact]
    public async Task A_rule_that_is_kept_holds_says_whose_it_is_and_emptied_is_common_practice_again()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        Assert.Contains("Today 8 h, common practice.", await GetAsync(shop, "/shop/rules"), StringComparison.Ordinal);
        await PostAsync(shop, "/shop/rules/form", ("ink.potLife", "10,5"), ("testNeeds", "dcResistance"), ("person", "Ines"));
        ShopRules rules = await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel);
        Assert.Equal(TimeSpan.FromHours(10.5), rules.PotLife);
        string page = await GetAsync(shop, "/shop/rules");
        Assert.Contains("Today 10.5 h, the shop&#x27;s. Emptied it is 8 h, common practice.", page, StringComparison.Ordinal);
        Assert.Contains("by Ines", page, StringComparison.Ordinal);
        string seen = Regex.Match(page, "name=\"seen\" value=\"([^\"]+)\"").Groups[1].Value;
        (HttpStatusCode stale, string told) = await PostAsync(shop, "/shop/rules/form", ("ink.potLife", "9"), ("seen", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, stale);
        Assert.Contains("changed meanwhile by Ines", told, StringComparison.Ordinal);
        await PostAsync(shop, "/shop/rules/form", ("ink.potLife", ""), ("testNeeds", "dcResistance"), ("seen", seen));
        Assert.Equal(new ShopRules().PotLife, (await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel)).PotLife);
    }

    [Fact]
    public async Task A_winder_is_added_and_changed_by_its_form_and_keeps_its_name()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        (string, string)[] gear =
        [
            ("name", "Winder 4"),
            ("kind", "gear"),
            ("gear.traverse.screwLead", "1"),
            ("gear.traverse.wheels", "20 30 40"),
            ("speed.low", "300"),
            ("speed.high", "1500"),
        ];
        (HttpStatusCode wrong, string page) = await PostAsync(shop, "/machines/form", [.. gear, ("spindles", "none")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong);
        Assert.Matches("id=\"spindles\" name=\"spindles\" value=\"none\"", page);
        Assert.Matches("option value=\"gear\" selected", page);
        Assert.Empty(await shop.Services.Machines.ListAsync(Cancel));

        await PostAsync(shop, "/machines/form", gear);
        Machine added = Assert.Single(await shop.Services.Machines.ListAsync(Cancel));
        Assert.Equal([20, 30, 40], Assert.IsType<Traverse.Gears>(added.Traverse).Wheels);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PostAsync(shop, "/machines/form", gear)).Status); // the name is taken
        Assert.Contains("value=\"20; 30; 40\"", await GetAsync(shop, "/machines/change?name=winder%204"), StringComparison.Ordinal);

        (string, string)[] changed = [.. gear, ("changed", "Winder 4"), ("spindles", "3")];
        await PostAsync(shop, "/machines/form", changed);
        Assert.Equal(3, Assert.Single(await shop.Services.Machines.ListAsync(Cancel)).Spindles);
        changed[0] = ("name", "Winder 5");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PostAsync(shop, "/machines/form", changed)).Status);
        Assert.Single(await shop.Services.Machines.ListAsync(Cancel));
    }

    [Fact]
    public async Task Files_are_taken_by_what_they_say_they_hold_and_every_mistake_of_each_is_named()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        StringBuilder body = new();
        foreach (
            (string name, string text) in new[]
            {
                ("pier.json", Recipe),
                (
                    "bad.json",
                    Recipe
                        .Replace("8000", "\"many\"", StringComparison.Ordinal)
                        .Replace("AWG 42", "AWG 99", StringComparison.Ordinal)
                        .Replace("Pier", "Skerry", StringComparison.Ordinal)
                ),
                ("winder.json", """{ "format": "coilwright.machine/1", "name": "Winder 9", "kind": "hand-guided" }"""),
                ("rules.json", """{ "format": "coilwright.rules/1", "gaussSpread": "7 %" }"""),
                ("load.json", """{ "format": "coilwright.load/1" }"""),
                ("torn.json", """{ "format": """),
            }
        )
        {
            body.Append("--part\r\nContent-Disposition: form-data; name=\"files\"; filename=\"" + name + "\"\r\n")
                .Append("Content-Type: application/json\r\n\r\n" + text + "\r\n");
        }

        using StringContent form = new(body.Append("--part--\r\n").ToString());
        form.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=part");

        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/shop/files", UriKind.Relative), form, Cancel);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(["Pier"], (await shop.Services.Recipes.ListAsync(Cancel)).Select(one => one.RecipeName));
        Assert.Equal("Winder 9", Assert.Single(await shop.Services.Machines.ListAsync(Cancel)).Name);
        Assert.Equal(0.07, (await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel)).GaussSpread, 12);
        Assert.All(["recipe Pier", "winder Winder 9", "the shop's rules"], kept => Assert.Contains(kept, page, StringComparison.Ordinal));
        Assert.Equal(3, Regex.Count(page, "<ul class=\"problems\""));
        string bad = Regex.Match(page, "aria-label=\"bad.json\".*?</ul>", RegexOptions.Singleline).Value;
        Assert.Equal(2, Regex.Count(bad, "<li>"));
        Assert.Contains("a shop takes in no file of this kind", page, StringComparison.OrdinalIgnoreCase);
    }

    private static async Task<string> GetAsync(PagesOfShop shop, string address) =>
        await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel);

    private static async Task<(HttpStatusCode Status, string Page)> PostAsync(
        PagesOfShop shop,
        string address,
        params (string Name, string Value)[] fields
    )
    {
        using FormUrlEncodedContent form = new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri(address, UriKind.Relative), form, Cancel);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel)));
    }
}
