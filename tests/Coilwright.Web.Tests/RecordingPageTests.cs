using System.Net;
using System.Text;
using Coilwright.Bench;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>A person's own recording, sent to its page and heard as another pickup would have given it.</summary>
public sealed class RecordingPageTests
{
    private const string MeasuredPickup = """
        { "format": "coilwright.lumped/1", "resistance": "6.2 kohm", "inductance": "2.5 H", "capacitance": "110 pF" }
        """;

    private static readonly string[] s_files = ["harbour-bridge.json", "keel-blade.json"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Within half a decibel of its level: the signal is a plucked string without noise.</summary>
    [Fact]
    public async Task From_one_pickup_to_another_and_back_is_the_recording_again()
    {
        await using ServedShop shop = await StockedAsync();
        (string harbour, string keel) = await TwoAsync(shop);
        byte[] recorded = await BytesAsync(shop, $"/listen/0.wav?level=true&length=1%20s&string=1&pluck=20%20mm&design0={harbour}");
        string there = await SentAsync(shop, recorded, ("from", harbour), ("to", keel), ("level", "true"));
        double[] first = Samples(await BytesAsync(shop, Sound(there, "a"))),
            other = Samples(await BytesAsync(shop, Sound(there, "b")));
        double apart = Residual(first, other);
        Assert.True(apart > 0.15, $"the two pickups sound alike, {apart:0.000}: nothing was exchanged");
        byte[] asOther = await BytesAsync(shop, Sound(there, "b"));
        string back = await SentAsync(shop, asOther, ("from", keel), ("to", harbour), ("level", "true"));
        const double HalfDb = 0.059; // 10^(0.5/20) − 1
        Assert.InRange(Residual(first, Samples(await BytesAsync(shop, Sound(back, "b")))), 0, HalfDb);
        string page = await PageAsync(shop, there);
        Assert.Contains("A: as recorded with Harbour bridge A, on load player", page, StringComparison.Ordinal);
        Assert.Contains("B: as with Keel blade A, on load player", page, StringComparison.Ordinal);
        Assert.Matches("True levels: B is [0-9.]+ dB (louder|softer) than A by its circuit alone", page);
        Assert.Contains("the first pickup is undone", page, StringComparison.Ordinal);
        Assert.Contains("only the electrical responses are exchanged", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Matched_sounds_have_one_level_and_the_recording_need_not_be_sent_again()
    {
        await using ServedShop shop = await StockedAsync();
        (string harbour, string keel) = await TwoAsync(shop);
        string first = await SentAsync(shop, await StringAsync(shop, harbour), ("from", harbour), ("to", keel));
        double[] a = Samples(await BytesAsync(shop, Sound(first, "a"))),
            b = Samples(await BytesAsync(shop, Sound(first, "b")));
        Assert.Equal(Rms(a), Rms(b), 1e-6);
        Assert.Equal(0.7, Math.Max(a.Max(Math.Abs), b.Max(Math.Abs)), 1e-6);
        string again = await SentAsync(shop, [], ("kept", first[^36..]), ("from", harbour), ("to", harbour));
        Assert.InRange(Residual(a, Samples(await BytesAsync(shop, Sound(again, "b")))), 0, 1e-4); // the same pickup: the same sound
    }

    [Fact]
    public async Task A_measured_pickup_comes_as_a_file_and_goes_before_the_recipe()
    {
        await using ServedShop shop = await StockedAsync();
        (string harbour, string keel) = await TwoAsync(shop);
        using MultipartFormDataContent form = Form(await StringAsync(shop, harbour), ("from", harbour), ("to", keel));
        form.Add(
            new ByteArrayContent([.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(MeasuredPickup)]),
            "to.file",
            "old-one.json"
        );
        using HttpResponseMessage answer = await shop.Client.PostAsync(s_page, form, Cancel);
        Assert.True(answer.StatusCode == HttpStatusCode.Found, await answer.Content.ReadAsStringAsync(Cancel));
        Assert.Contains("as with old-one", await PageAsync(shop, answer.Headers.Location!.ToString()), StringComparison.Ordinal);
        using MultipartFormDataContent broken = Form(await StringAsync(shop, harbour), ("from", harbour));
        broken.Add(new ByteArrayContent("{ no pickup"u8.ToArray()), "to.file", "notes.json");
        string refused = await RefusedAsync(shop, broken);
        Assert.Contains("notes.json", refused, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Everything_wrong_is_told_at_once()
    {
        await using ServedShop shop = await StockedAsync();
        using MultipartFormDataContent nothing = Form([], ("fromLoad", "a barn"));
        string refused = await RefusedAsync(shop, nothing);
        string[] told = ["Choose the recording", "Choose the pickup", "No such load is known"];
        Assert.Equal([], told.Where(words => !refused.Contains(words, StringComparison.Ordinal)));
        (string harbour, string keel) = await TwoAsync(shop);
        using MultipartFormDataContent silent = Form(WaveFile.Write(48_000, new double[48_000]), ("from", harbour), ("to", keel));
        Assert.Contains("the recording is silent", await RefusedAsync(shop, silent), StringComparison.OrdinalIgnoreCase);
        using MultipartFormDataContent noWave = Form("RIFF and no more"u8.ToArray(), ("from", harbour), ("to", keel));
        Assert.Contains("recording", await RefusedAsync(shop, noWave), StringComparison.OrdinalIgnoreCase);
        using HttpResponseMessage gone = await shop.Client.GetAsync(
            new Uri($"/listen/recording?sound={Guid.NewGuid()}", UriKind.Relative),
            Cancel
        );
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
        Assert.Contains("This recording is gone", await gone.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    private static readonly Uri s_page = new("/listen/recording", UriKind.Relative);

    private static async Task<ServedShop> StockedAsync()
    {
        ServedShop shop = await ServedShop.StartAsync();
        foreach (string file in s_files)
        {
            string json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", file), Cancel);
            Assert.Empty((await shop.Services.Recipes.SaveAsync(Guid.NewGuid(), json, "", "Joss", 0, Cancel)).Problems);
        }

        return shop;
    }

    private static async Task<(string Harbour, string Keel)> TwoAsync(ServedShop shop)
    {
        IReadOnlyList<RevisionRecord> recipes = await shop.Services.Recipes.ListAsync(Cancel);
        string Of(string name) => recipes.First(recipe => recipe.RecipeName == name).RecipeId.ToString();
        return (Of("Harbour bridge"), Of("Keel blade"));
    }

    private static Task<byte[]> StringAsync(ServedShop shop, string recipe) =>
        BytesAsync(shop, $"/listen/0.wav?level=true&length=1%20s&design0={recipe}");

    private static MultipartFormDataContent Form(byte[] wave, params (string Name, string Value)[] fields)
    {
        MultipartFormDataContent form = [];
        Dictionary<string, string> all = new()
        {
            ["fromLoad"] = "player",
            ["toLoad"] = "player",
            ["level"] = "matched",
        };
        foreach ((string name, string value) in fields)
        {
            all[name] = value;
        }

#pragma warning disable CA2000 // closed with the form
        foreach ((string name, string value) in all)
        {
            form.Add(new StringContent(value), name);
        }

        if (wave.Length > 0)
        {
            form.Add(new ByteArrayContent(wave), "recording", "mine.wav");
        }
#pragma warning restore CA2000

        return form;
    }

    /// <summary>Address of the page that answers.</summary>
    private static async Task<string> SentAsync(ServedShop shop, byte[] wave, params (string Name, string Value)[] fields)
    {
        using MultipartFormDataContent form = Form(wave, fields);
        using HttpResponseMessage answer = await shop.Client.PostAsync(s_page, form, Cancel);
        Assert.True(answer.StatusCode == HttpStatusCode.Found, await answer.Content.ReadAsStringAsync(Cancel));
        return answer.Headers.Location!.ToString();
    }

    private static async Task<string> RefusedAsync(ServedShop shop, MultipartFormDataContent form)
    {
        using HttpResponseMessage answer = await shop.Client.PostAsync(s_page, form, Cancel);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
    }

    private static string Sound(string page, string which) => $"/listen/recording/{which}.wav?sound={page[^36..]}";

    private static async Task<string> PageAsync(ServedShop shop, string address) =>
        WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));

    private static Task<byte[]> BytesAsync(ServedShop shop, string address) =>
        shop.Client.GetByteArrayAsync(new Uri(address, UriKind.Relative), Cancel);

    private static double[] Samples(byte[] wave) => WaveFile.Read(wave).Value!.Channels[0];

    private static double Rms(double[] samples) => Math.Sqrt(samples.Average(one => one * one));

    /// <summary>What is left of the second when as much of the first as fits is taken away, of its r.m.s.</summary>
    private static double Residual(double[] first, double[] second)
    {
        double part = first.Zip(second, (one, two) => one * two).Sum() / first.Sum(one => one * one);
        return Rms([.. first.Zip(second, (one, two) => two - part * one)]) / Rms(second);
    }
}
