using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Interpretations;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>Without scripts: a figure with two readings comes back with a button for each, and one press decides and goes on.</summary>
public sealed partial class TwoReadingsFormTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Ohms_of_a_coil_are_decided_with_one_press_before_anything_is_stored()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        BatchRecord batch = await BatchAsync(shop);
        string address = $"/batches/{batch.Id}/enter",
            typed = Ambiguous(await NominalAsync(shop, batch));
        Dictionary<string, string> form = new()
        {
            ["id"] = $"{Guid.NewGuid()}",
            ["tag"] = "C-001",
            ["resistance"] = typed,
            ["temperature"] = "20 °C",
        };
        string asked = await PostAsync(shop, address, form, HttpStatusCode.UnprocessableEntity);
        Assert.Empty(await shop.Records.Readings.OfBatchAsync(batch.Id, Cancel));
        Match[] choices = [.. Choice().Matches(asked).Cast<Match>()];
        Assert.Equal(2, choices.Length);
        Assert.All(choices, choice => Assert.Equal("reading of resistance", choice.Groups[1].Value));
        // Enter in the field presses neither of them
        Assert.True(asked.IndexOf("<button hidden", StringComparison.Ordinal) < choices[0].Index);

        form[choices[1].Groups[1].Value] = choices[1].Groups[2].Value;
        await PostAsync(shop, address, form, HttpStatusCode.OK);
        ReadingRecord kept = Assert.Single(await shop.Records.Readings.OfBatchAsync(batch.Id, Cancel));
        Assert.Equal(
            (choices[1].Groups[2].Value, double.Parse(typed.Replace(",", "", StringComparison.Ordinal), CultureInfo.InvariantCulture)),
            (kept.Typed, kept.Si)
        );
    }

    [Theory]
    [InlineData("correct", 2)]
    [InlineData("look", 1)]
    public async Task A_correction_goes_on_with_what_was_asked_for(string act, int readings)
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        BatchRecord batch = await BatchAsync(shop);
        string typed = Ambiguous(await NominalAsync(shop, batch));
        Assert.Empty(
            (
                await shop.Services.Winding.RecordCoilAsync(
                    new()
                    {
                        Id = Guid.NewGuid(),
                        BatchId = batch.Id,
                        Tag = "C-001",
                        Resistance = "6.2 k",
                        Temperature = "20 °C",
                    },
                    Cancel
                )
            ).Problems
        );
        string reading = $"{(await shop.Records.Readings.OfBatchAsync(batch.Id, Cancel))[0].Id}",
            address = $"/batches/{batch.Id}/coils/C-001/correct";
        Dictionary<string, string> form = new()
        {
            ["id"] = $"{Guid.NewGuid()}",
            ["reading"] = reading,
            [$"value {reading}"] = typed,
            [$"temperature {reading}"] = "20 °C",
            ["reason"] = "misread",
            ["act"] = act,
        };
        string asked = await PostAsync(shop, address, form, HttpStatusCode.UnprocessableEntity);
        Match choice = Choice().Matches(asked)[1];
        Assert.Equal($"reading of value {reading}", choice.Groups[1].Value);
        Assert.Single(await shop.Records.Readings.OfBatchAsync(batch.Id, Cancel));

        form.Remove("act"); // the button of a reading carries its own name alone
        form["asked"] = Asked().Match(asked).Groups[1].Value;
        form[choice.Groups[1].Value] = choice.Groups[2].Value;
        string done = await PostAsync(shop, address, form, HttpStatusCode.OK);
        Assert.Equal(readings, (await shop.Records.Readings.OfBatchAsync(batch.Id, Cancel)).Count);
        Assert.Equal(act == "look", done.Contains("Understood, not saved yet", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_spools_length_is_decided_with_one_press_and_the_form_keeps_what_was_typed()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        Dictionary<string, string> spool = new()
        {
            ["id"] = $"{Guid.NewGuid()}",
            ["label"] = "0117",
            ["gauge"] = "AWG 42",
            ["insulation"] = "plain-enamel",
            ["build"] = "single",
            ["received"] = "2,270",
            ["lot"] = "K-7",
        };
        string asked = await PostAsync(shop, "/spools", spool, HttpStatusCode.UnprocessableEntity);
        Match choice = Choice().Matches(asked)[1];
        Assert.Equal(("reading of received", "2270 g"), (choice.Groups[1].Value, choice.Groups[2].Value));
        Assert.Contains("value=\"K-7\"", asked, StringComparison.Ordinal);
        Assert.Empty(await shop.Records.Stock.SpoolsAsync(Cancel));
        spool[choice.Groups[1].Value] = choice.Groups[2].Value;
        await PostAsync(shop, "/spools", spool, HttpStatusCode.OK);
        Assert.Equal("0117", Assert.Single(await shop.Records.Stock.SpoolsAsync(Cancel)).Label);
    }

    [Fact]
    public async Task What_a_counter_and_a_marked_test_show_is_said_beside_their_fields()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        BatchRecord batch = await BatchAsync(shop);
        Assert.Empty(await shop.Services.Machines.AddAsync(Guid.NewGuid(), "Winder 1", "", Cancel));
        foreach (
            (string page, string understood) in new[]
            {
                ("/machines", "winder.turns"),
                ("/machines", "winder.counted"),
                ($"/batches/{batch.Id}/wind", "wind.counter"),
                ($"/batches/{batch.Id}/enter", "entry.resistance"),
            }
        )
        {
            string html = WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(page, UriKind.Relative), Cancel));
            Assert.Matches(
                $"<input[^>]*data-understood=\"{Regex.Escape(understood)}\"[^>]*>\\s*<span class=\"understood\" data-understanding",
                html
            );
        }

        Dictionary<string, string> test = new()
        {
            ["id"] = $"{Guid.NewGuid()}",
            ["machine"] = "Winder 1",
            ["turns"] = "1,006",
            ["counted"] = "100",
        };
        string refused = await PostAsync(shop, "/machines/test", test, HttpStatusCode.UnprocessableEntity);
        Assert.Contains("1,006 turns", refused, StringComparison.Ordinal);
        Assert.Contains("value=\"1,006\"", refused, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("resistance", "50,500", "50500 Ω")]
    [InlineData("resistance", "6,210", "taken as 6210 Ω")]
    [InlineData("resistance", "+6.21000E+03", "6210 Ω")]
    [InlineData("temperature", "23,5", "23.5 °C")]
    public async Task While_typing_the_good_coils_ohms_decide(string field, string typed, string said)
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        string part = WebUtility.HtmlDecode(
            await shop.Client.GetStringAsync(
                new Uri($"/understood?field=entry.{field}&typed={Uri.EscapeDataString(typed)}&expected=6180.5", UriKind.Relative),
                Cancel
            )
        );
        Assert.Contains(said, part, StringComparison.Ordinal);
    }

    /// <summary>Fields of words, and those whose text is a small language of its own that the page answers as a whole.</summary>
    private static readonly HashSet<string> s_words =
    [
        "token-name",
        "tag",
        "code",
        "name",
        "person",
        "reason",
        "newTag",
        "note",
        "lot",
        "lots",
        "serial",
        "coils",
        "overruled",
        "magnets",
        "charger",
        "basket",
        "mix",
        "piece",
        "place",
        "of",
        "others",
        "why",
        "undo-reason",
        "at",
        "in",
        "done",
        "cost",
        "complaint",
        "customer",
        "address", // of an instrument: a host, a port or a device
        "since",
        "limits-person",
        "vary",
        "want",
        "own", // a width and a height
        "value", // a row of what is wanted tells how it was understood
        "upto",
        "@(Offered.Key)-from", // the search says what it looked at
        "@(Offered.Key)-to",
        "show",
        "q",
        "@name",
        "@field",
    ];

    [Fact]
    public void Every_field_that_takes_a_number_says_how_it_is_understood()
    {
        List<string> silent = [],
            unknown = [];
        foreach (string file in Directory.EnumerateFiles(PagesFolder(), "*.razor", SearchOption.AllDirectories))
        {
            string text = File.ReadAllText(file);
            silent.AddRange(
                Input()
                    .Matches(text)
                    .Select(input => input.Value)
                    .Where(input =>
                        !input.Contains("data-understood", StringComparison.Ordinal)
                        && !Other().IsMatch(input)
                        && !s_words.Contains(Name().Match(input).Groups[1].Value)
                    )
                    .Select(input => $"{Path.GetFileName(file)}: {input}")
            );
            unknown.AddRange(
                Understood()
                    .Matches(text)
                    .Select(one => one.Groups[1].Value)
                    .Where(name =>
                        FieldInterpreter.Read(name, name.EndsWith("charge", StringComparison.Ordinal) ? "80 %" : "42").Echo.Length == 0
                    )
            );
        }

        Assert.True(silent.Count == 0, string.Join('\n', silent));
        Assert.Empty(unknown);
    }

    private static string PagesFolder([System.Runtime.CompilerServices.CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "src", "Coilwright.Web", "Pages");

    private static async Task<BatchRecord> BatchAsync(PagesOfShop shop)
    {
        RevisionRecord revision = await shop.ReleasedAsync(
            await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "sandbar-wide.json"), Cancel)
        );
        return await shop.PlantedAsync(revision, "H-12", RecipeReader.Read(revision.Json).Value!.Coils[0].Name);
    }

    private static async Task<double> NominalAsync(PagesOfShop shop, BatchRecord batch) =>
        (await shop.Services.Winding.StatusAsync(batch.Id, Cancel))!.Limits.Resistance.Nominal;

    /// <summary>Ten times a good coil's ohms, with a comma: neither of its readings is near a good coil.</summary>
    private static string Ambiguous(double nominalOhm) => $"{(int)(nominalOhm / 100)},100";

    private static async Task<string> PostAsync(PagesOfShop shop, string address, Dictionary<string, string> form, HttpStatusCode expected)
    {
        using FormUrlEncodedContent content = new(form);
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri(address, UriKind.Relative), content, Cancel);
        string text = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.True(answer.StatusCode == expected, $"{address}: {answer.StatusCode}\n{text}");
        return text;
    }

    [GeneratedRegex("""<button class="quiet" name="(reading of [^"]+)" value="([^"]+)" data-take""")]
    private static partial Regex Choice();

    [GeneratedRegex("""name="asked"\svalue="([^"]*)" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Asked();

    [GeneratedRegex("""<input\s(?:[^>"]|"[^"]*")*>""")]
    private static partial Regex Input();

    [GeneratedRegex("""type="(?:hidden|checkbox|radio|range|date|file|password)" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Other();

    [GeneratedRegex("""\sname="([^"]+)" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Name();

    [GeneratedRegex("""(?:data-understood|Understood)="([a-z][A-Za-z.]+)" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Understood();
}
