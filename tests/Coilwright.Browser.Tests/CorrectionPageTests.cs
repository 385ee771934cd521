using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Browser.Tests;

/// <summary>Correction, undo and what is sent again, without a script: plain forms and the API over HTTP.</summary>
public sealed partial class CorrectionPageTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_reading_is_corrected_on_the_coils_page_and_the_old_one_stays_with_reason_and_person()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        using HttpClient web = new() { BaseAddress = shop.Url };
        (Guid batch, _) = await BatchAsync(shop, "6.81 k");
        string address = $"/batches/{batch}/coils/C-001/correct";
        Assert.Contains(
            address,
            await web.GetStringAsync(new Uri($"/batches/{batch}", UriKind.Relative), Cancel),
            StringComparison.Ordinal
        );
        Assert.Contains(
            address,
            await web.GetStringAsync(new Uri($"/batches/{batch}/coils/C-001", UriKind.Relative), Cancel),
            StringComparison.Ordinal
        );

        Dictionary<string, string> form = Fields(await web.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));
        string reading = form["reading"];
        Assert.Equal("6.81 k", form[$"value {reading}"]);
        form[$"value {reading}"] = "6.18 k";
        string silent = await PostAsync(web, address, form, HttpStatusCode.UnprocessableEntity);
        Assert.Contains("a correction needs a reason", silent, StringComparison.Ordinal);
        Assert.Equal("6.18 k", Fields(silent)[$"value {reading}"]); // nothing typed is lost

        form["reason"] = "figures swapped";
        form["person"] = "Ines";
        form["act"] = "look";
        Assert.Contains("C-001: 6.18 kΩ at 20.0 °C", await PostAsync(web, address, form, HttpStatusCode.OK), StringComparison.Ordinal);
        form["act"] = "correct";
        string page = await PostAsync(web, address, form, HttpStatusCode.OK);
        Assert.Contains("superseded: figures swapped, Ines", page, StringComparison.Ordinal);
        await PostAsync(web, address, form, HttpStatusCode.OK); // pressed twice
        form[$"value {reading}"] = "6.17 k";
        Assert.Contains("nothing was changed", await PostAsync(web, address, form, HttpStatusCode.Conflict), StringComparison.Ordinal);
        Assert.Equal(2, (await shop.Services.Records.Readings.OfBatchAsync(batch, Cancel)).Count);
    }

    [Fact]
    public async Task An_undo_sent_twice_undoes_once_by_form_and_by_api()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        using HttpClient web = new() { BaseAddress = shop.Url };
        (Guid batch, _) = await BatchAsync(shop, "6.18 k", "6.19 k", "6.20 k");
        Dictionary<string, string> form = new() { ["id"] = $"{Guid.NewGuid()}" };
        await PostAsync(web, $"/batches/{batch}/undo", form, HttpStatusCode.OK);
        await PostAsync(web, $"/batches/{batch}/undo", form, HttpStatusCode.OK);
        Assert.Equal(2, (await shop.Services.Winding.StatusAsync(batch, Cancel))!.Coils.Count);

        object undo = new { id = Guid.NewGuid(), person = "Mara" };
        for (int n = 0; n < 2; n++)
        {
            using HttpResponseMessage answer = await web.PostAsJsonAsync($"/api/batches/{batch}/undo", undo, Cancel);
            Assert.Equal(n == 1, (await answer.Content.ReadFromJsonAsync<JsonObject>(Cancel))!["duplicate"]!.GetValue<bool>());
        }

        Assert.Single((await shop.Services.Winding.StatusAsync(batch, Cancel))!.Coils);
        using HttpResponseMessage without = await web.PostAsJsonAsync($"/api/batches/{batch}/undo", new { person = "Mara" }, Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, without.StatusCode);
    }

    [Fact]
    public async Task An_id_with_another_temperature_is_answered_409_by_form_and_by_api_and_the_same_again_is_harmless()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        using HttpClient web = new() { BaseAddress = shop.Url };
        (Guid batch, _) = await BatchAsync(shop);
        foreach ((string address, bool api) in new[] { ($"/api/batches/{batch}/coils", true), ($"/batches/{batch}/enter", false) })
        {
            Guid id = Guid.NewGuid();
            foreach (
                (string temperature, HttpStatusCode expected) in new[]
                {
                    ("25", HttpStatusCode.OK),
                    ("25", HttpStatusCode.OK),
                    ("35", HttpStatusCode.Conflict),
                }
            )
            {
                Dictionary<string, string> sent = new()
                {
                    ["id"] = $"{id}",
                    ["batchId"] = $"{batch}",
                    ["tag"] = api ? "C-001" : "C-002",
                    ["resistance"] = "6.30 k",
                    ["temperature"] = temperature,
                };
                using FormUrlEncodedContent form = new(sent);
                using HttpResponseMessage answer = api
                    ? await web.PostAsJsonAsync(address, sent, Cancel)
                    : await web.PostAsync(new Uri(address, UriKind.Relative), form, Cancel);
                Assert.Equal(expected, answer.StatusCode);
            }
        }

        Assert.All(await shop.Services.Records.Readings.OfBatchAsync(batch, Cancel), reading => Assert.Equal(25, reading.TemperatureC));
    }

    [Fact]
    public async Task The_page_asks_once_which_coil_it_is_when_another_spool_was_put_on_before_a_tag_is_entered_again()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        using HttpClient web = new() { BaseAddress = shop.Url };
        (Guid batch, _) = await BatchAsync(shop, "6.18 k");
        shop.Clock.Advance(TimeSpan.FromMinutes(1));
        SpoolRecord other = new()
        {
            Id = Guid.NewGuid(),
            Label = "0200",
            Gauge = "AWG 42",
            Insulation = "plain-enamel",
            Build = "single",
            TimeUtc = shop.Clock.GetUtcNow(),
        };
        Assert.Empty(await shop.Services.Stock.TakeInAsync(other, "", "", Cancel));
        Assert.Empty(
            await shop.Services.Run.RecordEventAsync(
                new BatchEventEntry
                {
                    Id = Guid.NewGuid(),
                    BatchId = batch,
                    Kind = BatchEventKind.SpoolTaken,
                    Spool = "0200",
                    Choice = "hold-turns",
                },
                Cancel
            )
        );
        shop.Clock.Advance(TimeSpan.FromMinutes(1));
        await PostAsync(web, $"/batches/{batch}/undo", new() { ["id"] = $"{Guid.NewGuid()}" }, HttpStatusCode.OK);
        shop.Clock.Advance(TimeSpan.FromMinutes(1));

        Dictionary<string, string> form = Fields(await web.GetStringAsync(new Uri($"/batches/{batch}/enter", UriKind.Relative), Cancel));
        form["resistance"] = "6.18 k";
        string asked = await PostAsync(web, $"/batches/{batch}/enter", form, HttpStatusCode.UnprocessableEntity);
        Assert.Contains("same coil, from 0117", asked, StringComparison.Ordinal);
        Assert.Contains("new coil, from 0200", asked, StringComparison.Ordinal);
        Dictionary<string, string> answered = new(form) { ["coil C-001"] = "new", ["id"] = $"{Guid.NewGuid()}" },
            silent = Fields(asked);
        await PostAsync(web, $"/batches/{batch}/enter", silent, HttpStatusCode.OK); // asked once: without an answer it is the same coil
        CoilDossier coil = Assert.Single((await shop.Services.Winding.StatusAsync(batch, Cancel))!.Coils);
        Assert.Equal(("0117", "0200"), (coil.Origin.Spool, coil.Origin.OtherSpool));
        Assert.Contains(
            "spool 0200 was on when it was entered again",
            await web.GetStringAsync(new Uri($"/batches/{batch}/coils/C-001", UriKind.Relative), Cancel),
            StringComparison.Ordinal
        );

        await PostAsync(web, $"/batches/{batch}/undo", new() { ["id"] = $"{Guid.NewGuid()}" }, HttpStatusCode.OK);
        await PostAsync(web, $"/batches/{batch}/enter", answered, HttpStatusCode.OK);
        Assert.Equal(
            ("0200", ""),
            (
                (await shop.Services.Winding.StatusAsync(batch, Cancel))!.Coils[0].Origin.Spool,
                (await shop.Services.Winding.StatusAsync(batch, Cancel))!.Coils[0].Origin.Doubt
            )
        );
    }

    [Fact]
    public async Task An_open_coil_stands_at_the_upper_edge_of_the_strip_and_what_cannot_be_drawn_is_named()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        using HttpClient web = new() { BaseAddress = shop.Url };
        (Guid batch, _) = await BatchAsync(shop, "6.18 k", "open", "six", "6.19 k");
        string page = WebUtility.HtmlDecode(await web.GetStringAsync(new Uri($"/batches/{batch}", UriKind.Relative), Cancel));
        Assert.Matches(OpenCross(), page);
        Assert.Contains("Not drawn, without a usable resistance: C-003.", page, StringComparison.Ordinal);
        Assert.Contains("Left out, rejected or in doubt: 2", page, StringComparison.Ordinal);
    }

    private static async Task<(Guid Batch, IReadOnlyList<ReadingRecord> Readings)> BatchAsync(HostedShop shop, params string[] ohms)
    {
        Guid batch = Guid.NewGuid();
        RevisionRecord revision = await shop.ReleasedAsync("harbour-bridge.json");
        BatchRecord record = new(
            batch,
            "H-12",
            revision.RecipeId,
            revision.Number,
            "main",
            9,
            "C-",
            "0117",
            "Winder 2",
            "Mara",
            shop.Clock.GetUtcNow()
        );
        Assert.True(await shop.Services.Records.Batches.AddAsync(record, Cancel));
        for (int n = 0; n < ohms.Length; n++)
        {
            CoilEntry entry = new()
            {
                Id = Guid.NewGuid(),
                BatchId = batch,
                Tag = $"C-00{n + 1}",
                Resistance = ohms[n],
                Temperature = "20 °C",
                Person = "Mara",
            };
            // what waited on a tablet is kept whatever it says
            LateEntry waited = new(shop.Clock.GetUtcNow().AddMinutes(-9), shop.Clock.GetUtcNow());
            Assert.Empty((await shop.Services.Winding.RecordCoilAsync(entry, Cancel, waited)).Problems);
        }

        return (batch, await shop.Services.Records.Readings.OfBatchAsync(batch, Cancel));
    }

    private static async Task<string> PostAsync(HttpClient web, string address, Dictionary<string, string> fields, HttpStatusCode expected)
    {
        using FormUrlEncodedContent form = new(fields);
        using HttpResponseMessage answer = await web.PostAsync(new Uri(address, UriKind.Relative), form, Cancel);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.Equal((expected, page.Length > 0), (answer.StatusCode, true));
        return page;
    }

    /// <summary>What a browser without scripts would send of the page's main form: every input but ticks that are not set.</summary>
    private static Dictionary<string, string> Fields(string page)
    {
        string main = Form().Match(WebUtility.HtmlDecode(page)).Value;
        Dictionary<string, string> fields = [];
        foreach (
            string input in Input()
                .Matches(main)
                .Select(match => match.Value)
                .Where(input => !input.Contains("radio", StringComparison.Ordinal))
        )
        {
            fields[Name().Match(input).Groups[1].Value] = Value().Match(input).Groups[1].Value;
        }

        return fields;
    }

    [GeneratedRegex("<form method=\"post\" action=\"/batches/[^\"]*/(correct|enter)\".*?</form>", RegexOptions.Singleline)]
    private static partial Regex Form();

    [GeneratedRegex("<input[^>]*>")]
    private static partial Regex Input();

    [GeneratedRegex(" name=\"([^\"]*)\"")]
    private static partial Regex Name();

    [GeneratedRegex(" value=\"([^\"]*)\"")]
    private static partial Regex Value();

    [GeneratedRegex("<g class=\"reject\">\\s*<title>C-002: open, reject</title>\\s*<path d=\"M[0-9.]+ 21L")]
    private static partial Regex OpenCross();
}
