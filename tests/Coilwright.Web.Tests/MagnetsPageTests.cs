using System.Net;
using System.Text.RegularExpressions;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>Magnets by their page: pole by pole, what stops, and what is charged there.</summary>
public sealed class MagnetsPageTests
{
    /// <summary>One coil with rods of its own, and no step but assembly and the final test.</summary>
    private const string Recipe = """
        {"format":"coilwright.recipe/1","name":"Pier","coils":[{"name":"main","bobbin":{"coreLength":"64 mm","coreWidth":"6 mm",
         "windingHeight":"11 mm"},"wire":{"gauge":"AWG 42"},"winding":{"turns":8000,"direction":"clockwise"},
         "poles":[{"shape":"rod","material":"alnico-5","diameter":"4.75 mm","length":"17 mm","count":6,"spacing":"10.4 mm","top":"9 mm",
         "magnetised":"north-up"}]}],"steps":[{"name":"labelling"}]}
        """;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Poles_are_told_one_by_one_and_a_reversed_one_with_word_shape_and_remedy()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        await PieceAsync(shop, "P-1", "940 950 -960 970 1000 1010");
        string page = await GetAsync(shop, "/magnets");
        Assert.Contains("Do not go on with these", page, StringComparison.Ordinal);
        Assert.Matches("class=\"mark reject\"><span class=\"shape\"[^>]*>✕</span> Stop", page);
        Assert.Contains("Turn the magnet of pole 3 round", page, StringComparison.Ordinal);

        string poles = await GetAsync(shop, "/magnets?show=m-5");
        Assert.All(["940", "950", "-960 ✕", "970", "1000", "1010"], gauss =>
            Assert.Contains($">{gauss}</td>", poles, StringComparison.Ordinal)
        );
        Assert.Contains("Gauss at 1.00 mm", poles, StringComparison.Ordinal);
        Assert.Contains("No piece with magnets", await GetAsync(shop, "/magnets?show=nothing"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_nobody_said_is_charged_on_the_page_beside_its_cautions()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        await PieceAsync(shop, "P-1", "");
        string page = await GetAsync(shop, "/magnets");
        Assert.Contains("name=\"piece\" value=\"P-1\"", page, StringComparison.Ordinal);
        Assert.True(Regex.Count(page, "<p class=\"caution\">") > 0);

        (HttpStatusCode status, string refused) = await PostAsync(shop, ("piece", "P-1"), ("charge", "80"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("value=\"80\"", refused, StringComparison.Ordinal);
        Assert.Matches("value=\"P-1\" checked", refused);
        (_, string kept) = await PostAsync(shop, ("piece", "P-1"), ("charge", "80 %"), ("person", "Ines"));
        Assert.Contains("knocked down to 80 % of full", kept, StringComparison.Ordinal);
        Assert.Contains("Ines", kept, StringComparison.Ordinal);
    }

    private static async Task PieceAsync(PagesOfShop shop, string serial, string poles)
    {
        RevisionRecord revision = await shop.ReleasedAsync(Recipe);
        BatchRecord batch = await shop.PlantedAsync(revision, "B-1", "main");
        CoilEntry coil = new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = "C-001",
            Resistance = "6.2 k",
            Temperature = "20 °C",
        };
        Assert.Empty((await shop.Services.Winding.RecordCoilAsync(coil, Cancel)).Problems);
        AssemblyEntry made = new()
        {
            Id = Guid.NewGuid(),
            Coils = ["B-1/C-001"],
            MagnetLot = "M-5",
            Serial = serial,
            Person = "Ines",
        };
        Assert.Empty((await shop.Services.Pieces.Assembly.MakeAsync(made, Cancel)).Problems);
        Assert.Empty(await shop.Services.Pieces.Steps.BeginAsync(Guid.NewGuid(), "labelling", [serial], "", "Ines", Cancel));
        if (poles.Length > 0)
        {
            TestEntry test = new()
            {
                Id = Guid.NewGuid(),
                Serial = serial,
                Resistance = "6.2 k",
                Poles = poles,
            };
            Assert.Empty((await shop.Services.Pieces.Test.TestAsync(test, Cancel)).Problems);
        }
    }

    private static async Task<string> GetAsync(PagesOfShop shop, string address) =>
        WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));

    private static async Task<(HttpStatusCode Status, string Page)> PostAsync(PagesOfShop shop, params (string Name, string Value)[] fields)
    {
        using FormUrlEncodedContent form = new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/magnets/charge", UriKind.Relative), form, Cancel);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel)));
    }
}
