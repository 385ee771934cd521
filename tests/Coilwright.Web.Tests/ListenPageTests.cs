using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coilwright.Application.Curves;
using Coilwright.Application.Listening;
using Coilwright.Bench;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Web.Tests;

/// <summary>Designs heard one against the other, and a blind test from its start to its verdict.</summary>
public sealed partial class ListenPageTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_opens_with_two_designs_ready_to_play_and_its_caution()
    {
        await using ServedShop shop = await StockedAsync();
        string page = await PageAsync(shop, "/listen");
        Assert.Equal(2, VoiceAddress().Count(page));
        Assert.Contains(">A: Harbour bridge A, on load player<", page, StringComparison.Ordinal);
        Assert.Contains(">B: Keel blade A, on load player<", page, StringComparison.Ordinal);
        Assert.Contains(Cautions.Listening, page, StringComparison.Ordinal);
        Assert.Contains("Levels are matched", page, StringComparison.Ordinal);
        Assert.Contains("no bridge or body takes part", page, StringComparison.Ordinal);
        Assert.Contains("Deaf by its place at", page, StringComparison.Ordinal);
        Assert.Equal(2, Regex.Count(page, "<audio controls preload=\"none\" src=\"/listen/[01].wav"));
        Assert.Equal(1, Regex.Count(page, "<button(?![^>]*class=)")); // the main action: Play
    }

    [Fact]
    public async Task An_empty_shop_is_told_what_will_stand_here()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Assert.Contains("There is none yet", await PageAsync(shop, "/listen"), StringComparison.Ordinal);
        Assert.Contains("There is none yet", await PageAsync(shop, "/listen/blind"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sounds_have_one_rate_length_and_level_and_are_worked_out_once()
    {
        await using ServedShop shop = await StockedAsync();
        string[] addresses =
        [
            .. VoiceAddress().Matches(await PageAsync(shop, "/listen?play=strum&level=matched" + Two(shop))).Select(Address),
        ];
        int made = shop.Use<HearDesigns>().Made;
        Assert.Equal(2, made);
        WaveFile[] waves = [await WaveAsync(shop, addresses[0]), await WaveAsync(shop, addresses[1])];
        Assert.Equal(made, shop.Use<HearDesigns>().Made);
        Assert.All(waves, wave => Assert.Equal((48_000, 1, 4 * 48_000), (wave.RateHz, wave.Channels.Count, wave.Channels[0].Length)));
        double[] levels = [.. waves.Select(Rms)];
        Assert.Equal(levels[0], levels[1], 1e-6); // rounding to 24 bits: 6e-8 of full scale
        Assert.Equal(0.7, waves.Max(wave => wave.Channels[0].Max(Math.Abs)), 1e-6);
    }

    /// <summary>The level of the page's sounds is that of the command's engine, and their ratio is kept at true level.</summary>
    [Fact]
    public async Task True_levels_are_those_of_the_listen_command()
    {
        await using ServedShop shop = await StockedAsync();
        string query = "?level=true&length=1%20s" + Two(shop);
        WaveFile[] waves = [await WaveAsync(shop, "/listen/0.wav" + query), await WaveAsync(shop, "/listen/1.wav" + query)];
        double[] volts = [.. s_files.Select(CommandPeakV)];
        double[] peaks = [.. waves.Select(wave => wave.Channels[0].Max(Math.Abs))];
        Assert.Equal(0.7, peaks.Max(), 1e-6);
        Assert.Equal(volts[0] / volts[1], peaks[0] / peaks[1], 1e-5);
        Assert.Contains("True levels: B is", await PageAsync(shop, "/listen" + query), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Everything_wrong_is_told_at_once_and_no_sound_is_made_of_it()
    {
        await using ServedShop shop = await StockedAsync();
        string wrong = $"?level=matched&design0={Guid.NewGuid()}&design1=x&string=99&pitch=high&pluck=3 m&length=1 h";
        using HttpResponseMessage page = await GetAsync(shop, "/listen" + wrong);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, page.StatusCode);
        string text = WebUtility.HtmlDecode(await page.Content.ReadAsStringAsync(Cancel));
        string[] told =
        [
            "A:</strong>No such recipe",
            "B:</strong>No such recipe",
            "1 to 24",
            "\"high\"",
            "1.00 mm to 2.00 m",
            "0.500 s to 10.0 s",
        ];
        Assert.Equal([], told.Where(words => !text.Contains(words, StringComparison.Ordinal)));
        using HttpResponseMessage sound = await GetAsync(shop, "/listen/0.wav" + wrong);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "text/plain"), (sound.StatusCode, sound.Content.Headers.ContentType!.MediaType));
        string string9 = await RefusedAsync(shop, "?level=matched&string=9" + Two(shop));
        Assert.Contains("no such string. Understood: 9. Allowed: 1 to 6", string9, StringComparison.Ordinal);
        string strummed = await RefusedAsync(shop, "?level=matched&play=strum&pitch=110 Hz" + Two(shop));
        Assert.Contains("all open strings are strummed", strummed, StringComparison.Ordinal);
        Assert.Contains("Choose a design to hear", await RefusedAsync(shop, "?level=matched"), StringComparison.Ordinal);
        using HttpResponseMessage beyond = await GetAsync(shop, "/listen/3.wav?level=matched" + Two(shop));
        Assert.Equal(HttpStatusCode.NotFound, beyond.StatusCode);
    }

    [Fact]
    public async Task So_many_sounds_are_kept_and_a_browser_that_has_gone_leaves_none()
    {
        await using ServedShop shop = await StockedAsync();
        HearDesigns hear = shop.Use<HearDesigns>();
        IReadOnlyList<RevisionRecord> recipes = await shop.Services.Recipes.ListAsync(Cancel);
        ListenQuestion Asked(double lengthS) =>
            new(
                [new ListenChoice(recipes[0].RecipeId, ListenChoice.Unloaded)],
                Playing.One,
                new PluckQuestion(null, null, null, null, lengthS),
                Matched: true
            );
        using CancellationTokenSource gone = new();
        await gone.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => hear.HearAsync(Asked(1), recipes, KnownParts.None, gone.Token));
        Assert.Equal((0, 0), (hear.Made, hear.Kept));
        for (int at = 0; at < 18; at++)
        {
            Assert.Empty((await hear.HearAsync(Asked(0.5 + 0.01 * at), recipes, KnownParts.None, Cancel)).Problems);
        }

        Assert.Equal((18, 16), (hear.Made, hear.Kept));
    }

    [Fact]
    public async Task A_blind_test_tells_nothing_of_X_until_its_verdict()
    {
        await using ServedShop shop = await StockedAsync();
        string[] form = ["level", "matched", "length", "0.5 s", "rounds", "10", .. Two(shop).Split('&', '=').Skip(1)];
        string test = await PostedAsync(shop, "/listen/blind", form);
        Assert.Matches("^/listen/blind\\?test=[0-9a-f-]{36}$", test);
        string id = test[^36..];
        HashSet<string> pages = [],
            answers = [];
        for (int round = 1; round <= 10; round++)
        {
            string page = await PageAsync(shop, test);
            pages.Add(
                page.Replace($"Round {round} ", "", StringComparison.Ordinal)
                    .Replace($"round={round}\"", "", StringComparison.Ordinal)
                    .Replace($"name=\"round\" value=\"{round}\"", "", StringComparison.Ordinal)
            );
            (string headers, byte[] bytes)[] sounds =
            [
                await SoundAsync(shop, $"/listen/blind/a.wav?test={id}"),
                await SoundAsync(shop, $"/listen/blind/b.wav?test={id}"),
                await SoundAsync(shop, $"/listen/blind/x.wav?test={id}&round={round}"),
            ];
            Assert.Single(sounds.Select(sound => sound.headers).Distinct());
            Assert.Single(sounds.Select(sound => sound.bytes.Length).Distinct());
            Assert.NotEqual(sounds[0].bytes, sounds[1].bytes);
            using HttpResponseMessage later = await GetAsync(shop, $"/listen/blind/x.wav?test={id}&round={round + 1}");
            Assert.Equal(HttpStatusCode.NotFound, later.StatusCode);
            string answer = sounds[2].bytes.AsSpan().SequenceEqual(sounds[1].bytes) ? "B" : "A";
            answers.Add(answer);
            for (int sent = 0; sent < 2; sent++)
            {
                Assert.Equal(test, await PostedAsync(shop, "/listen/blind/answer", "test", id, "round", $"{round}", "answer", answer));
            }
        }

        Assert.Single(pages); // one page for all rounds, whatever X was
        string over = await PageAsync(shop, test);
        Assert.Contains("A difference was heard", over, StringComparison.Ordinal);
        Assert.Contains("10 of 10 right", over, StringComparison.Ordinal);
        Assert.Contains("10 or more of 10 right in 0.10 % of such tests", over, StringComparison.Ordinal);
        Assert.DoesNotMatch("[0-9]+ right|of [0-9]+ right|ifference (was heard|shown)|guesses has", pages.Single());
        Assert.InRange(answers.Count, 1, 2);
    }

    [Fact]
    public async Task A_blind_test_of_two_that_are_alike_or_of_one_that_is_gone_is_refused_in_words()
    {
        await using ServedShop shop = await StockedAsync();
        string one = (await shop.Services.Recipes.ListAsync(Cancel))[0].RecipeId.ToString();
        string[] alike = ["level", "matched", "length", "0.5 s", "rounds", "16", "design0", one, "design1", one];
        using FormUrlEncodedContent form = KnownHostsTests.Form([.. alike.Chunk(2).Select(pair => (pair[0], pair[1]))]);
        using HttpResponseMessage refused = await shop.Client.PostAsync(new Uri("/listen/blind", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("nothing to tell apart", await refused.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        using HttpResponseMessage gone = await GetAsync(shop, $"/listen/blind?test={Guid.NewGuid()}");
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
    }

    [Fact]
    public async Task A_place_left_empty_leaves_the_letters_of_the_others_where_they_are()
    {
        await using ServedShop shop = await StockedAsync();
        string apart = Two(shop)
            .Replace("design1", "design2", StringComparison.Ordinal)
            .Replace("design0", "design1", StringComparison.Ordinal);
        string page = await PageAsync(shop, "/listen?level=true&length=0.5%20s" + apart);
        Assert.Contains(">B: Harbour bridge A, on load player<", page, StringComparison.Ordinal);
        Assert.Contains(">C: Keel blade A, on load player<", page, StringComparison.Ordinal);
        Assert.Matches("True levels: C is [0-9.]+ dB (louder|softer) than B", page);
        Assert.DoesNotContain("data-voice=\"A\"", page, StringComparison.Ordinal);
        Assert.Equal(2, VoiceAddress().Count(page));
        foreach (Match address in VoiceAddress().Matches(page))
        {
            await WaveAsync(shop, Address(address));
        }
    }

    [Fact]
    public async Task A_blind_test_of_two_that_play_different_notes_is_refused_in_words()
    {
        await using ServedShop shop = await StockedAsync();
        JsonNode four = JsonNode.Parse(Recipe("keel-blade.json"))!;
        four["name"] = "Keel blade for four";
        four["strings"]!["count"] = 4;
        Assert.Empty((await shop.Services.Recipes.SaveAsync(Guid.NewGuid(), four.ToJsonString(), "", "Joss", 0, Cancel)).Problems);
        IReadOnlyList<RevisionRecord> recipes = await shop.Services.Recipes.ListAsync(Cancel);
        string Of(string name) => recipes.First(recipe => recipe.RecipeName == name).RecipeId.ToString();
        string[] form =
        [
            .. (string[])["level", "matched", "play", "strum", "length", "0.5 s", "rounds", "10"],
            .. (string[])["design0", Of("Keel blade"), "design1", Of("Keel blade for four")],
        ];
        using FormUrlEncodedContent sent = KnownHostsTests.Form([.. form.Chunk(2).Select(pair => (pair[0], pair[1]))]);
        using HttpResponseMessage refused = await shop.Client.PostAsync(new Uri("/listen/blind", UriKind.Relative), sent, Cancel);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("play different notes", await refused.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        string query = string.Join('&', form.Chunk(2).Select(pair => $"{pair[0]}={Uri.EscapeDataString(pair[1])}"));
        Assert.Contains("do not play the same notes", await PageAsync(shop, "/listen?" + query), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("true", true)]
    [InlineData("matched", false)]
    public async Task A_difference_heard_at_true_level_may_be_loudness_alone(string level, bool told)
    {
        await using ServedShop shop = await StockedAsync();
        string[] form = ["level", level, "length", "0.5 s", "rounds", "10", .. Two(shop).Split('&', '=').Skip(1)];
        string test = await PostedAsync(shop, "/listen/blind", form);
        BlindTest under = shop.Use<BlindTests>().Find(Guid.Parse(test[^36..]))!;
        for (int round = 1; round <= 10; round++)
        {
            under.Answer(round, under.Unknown(round)!.AsSpan().SequenceEqual(under.Known(1)));
        }

        string over = await PageAsync(shop, test);
        Assert.Contains("10 of 10 right", over, StringComparison.Ordinal);
        Assert.Equal(told, over.Contains("may be loudness alone", StringComparison.Ordinal));
    }

    private static readonly string[] s_files = ["harbour-bridge.json", "keel-blade.json"];

    private static async Task<ServedShop> StockedAsync()
    {
        ServedShop shop = await ServedShop.StartAsync();
        foreach (string file in s_files)
        {
            Assert.Empty((await shop.Services.Recipes.SaveAsync(Guid.NewGuid(), Recipe(file), "", "Joss", 0, Cancel)).Problems);
        }

        s_two.AddOrUpdate(shop, await QueryOfAsync(shop));
        return shop;
    }

    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<ServedShop, string> s_two = [];

    /// <summary>Both recipes as a query, in the order of their files.</summary>
    private static string Two(ServedShop shop) => s_two.TryGetValue(shop, out string? query) ? query : "";

    private static async Task<string> QueryOfAsync(ServedShop shop)
    {
        IReadOnlyList<RevisionRecord> recipes = await shop.Services.Recipes.ListAsync(Cancel);
        string Of(string name) => recipes.First(recipe => recipe.RecipeName == name).RecipeId.ToString();
        return $"&design0={Of("Harbour bridge")}&design1={Of("Keel blade")}";
    }

    private static string Recipe(string file) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "recipes", file));

    private static double CommandPeakV(string file)
    {
        ResponseSource source = ResponseSource.Read(Recipe(file), file, UsualLoad.Player.Load, Cancel).Value!;
        return new HearPluck().Hear(source, new PluckQuestion(null, null, null, null, 1), Cancel).Value!.Answer.PeakV!.Value;
    }

    private static double Rms(WaveFile wave) => Math.Sqrt(wave.Channels[0].Take(wave.RateHz).Average(value => value * value));

    private static string Address(Match match) => match.Groups[1].Value;

    private static Task<HttpResponseMessage> GetAsync(ServedShop shop, string address) =>
        shop.Client.GetAsync(new Uri(address, UriKind.Relative), Cancel);

    private static async Task<string> PageAsync(ServedShop shop, string address) =>
        WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));

    private static async Task<string> RefusedAsync(ServedShop shop, string query)
    {
        using HttpResponseMessage answer = await GetAsync(shop, "/listen" + query);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
    }

    private static async Task<WaveFile> WaveAsync(ServedShop shop, string address) =>
        WaveFile.Read((await SoundAsync(shop, address)).Bytes).Value!;

    /// <summary>A sound with all headers of its answer but its time.</summary>
    private static async Task<(string Headers, byte[] Bytes)> SoundAsync(ServedShop shop, string address)
    {
        using HttpResponseMessage answer = await GetAsync(shop, address);
        Assert.Equal((HttpStatusCode.OK, "audio/wav"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.True(answer.Headers.CacheControl!.NoStore);
        string headers = string.Join(
            '\n',
            answer
                .Headers.Concat(answer.Content.Headers)
                .Where(header => header.Key != "Date")
                .Select(header => $"{header.Key}: {string.Join(',', header.Value)}")
                .Order(StringComparer.Ordinal)
        );
        return (headers, await answer.Content.ReadAsByteArrayAsync(Cancel));
    }

    private static async Task<string> PostedAsync(ServedShop shop, string address, params string[] pairs)
    {
        using FormUrlEncodedContent form = KnownHostsTests.Form([.. pairs.Chunk(2).Select(pair => (pair[0], pair[1]))]);
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri(address, UriKind.Relative), form, Cancel);
        Assert.True(answer.StatusCode == HttpStatusCode.Found, await answer.Content.ReadAsStringAsync(Cancel));
        return answer.Headers.Location!.ToString();
    }

    [GeneratedRegex("data-wave=\"(/listen/[^\"]+)\"")]
    private static partial Regex VoiceAddress();
}
