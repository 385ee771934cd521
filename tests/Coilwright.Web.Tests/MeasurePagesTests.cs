using System.Buffers.Binary;
using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Sound;

namespace Coilwright.Web.Tests;

/// <summary>Measurements by their pages: the answer with its interval, and every mistake on top and beside its field.</summary>
public sealed class MeasurePagesTests
{
    private static readonly LumpedPickup s_pickup = new(6200, 2.5, 120e-12);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Resonances_with_a_known_capacitor_give_inductance_and_own_capacitance()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        string page = await GetAsync(
            shop,
            "/measure/resonance?peaks[0].frequency=9.19&peaks[1].frequency=4.14+kHz&peaks[1].capacitor=470&inductance=2.53+H"
        );
        // 9.19 kHz bare and 4.14 kHz with 470 pF: 120 pF and 2.5 H by arithmetic, 1/(2πf)² = L·(C + added).
        double ratio = Math.Pow(9.19 / 4.14, 2),
            farad = 470e-12 / (ratio - 1),
            henry = 1 / (Math.Pow(2 * Math.PI * 9190, 2) * farad);
        Match found = Regex.Match(page, "Inductance, measured</span> <strong class=\"large block\">([0-9.]+) H</strong>");
        Assert.Equal(henry, double.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture), 0.001);
        Match own = Regex.Match(page, "Own capacitance, measured</span> <strong class=\"large block\">([0-9.]+) pF</strong>");
        Assert.Equal(farad * 1e12, double.Parse(own.Groups[1].Value, CultureInfo.InvariantCulture), 0.1);
        Assert.Contains("read at 1.00 kHz is +1.2", page, StringComparison.Ordinal);
        Assert.Contains("value=\"9.19\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_resonance_that_cannot_be_is_told_on_top_and_beside_its_field()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        using HttpResponseMessage answer = await shop.Client.GetAsync(
            new Uri("/measure/resonance?peaks[0].frequency=9.19+kHz&peaks[1].frequency=soon&peaks[1].capacitor=-4", UriKind.Relative),
            Cancel
        );
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(2, Regex.Count(Regex.Match(page, "<ul class=\"problems\".*?</ul>", RegexOptions.Singleline).Value, "<li>"));
        Assert.Equal(2, Regex.Count(page, "<span class=\"problem\">"));
        Assert.Contains("value=\"soon\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_curve_of_impedance_gives_back_its_pickup()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        (HttpStatusCode status, string page) = await PostAsync(
            shop,
            "/measure/curve",
            [],
            ("curves[0].file", "pier.csv", Encoding.UTF8.GetBytes(Impedance()))
        );
        Assert.Equal(HttpStatusCode.OK, status);
        Match found = Regex.Match(page, "Inductance at 1.00 kHz, measured</span> <strong class=\"large block\">([0-9.]+) H</strong>");
        Assert.Equal(2.5, double.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture), 0.002);
        Assert.Contains("pier.csv: 120 points", page, StringComparison.Ordinal);
        Assert.DoesNotContain("parallelLoss", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_gain_curves_with_known_loads_need_no_flat_source()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        (HttpStatusCode status, string page) = await PostAsync(
            shop,
            "/measure/curve",
            [("curves[1].capacitance", "10 nF")],
            ("curves[0].file", "bare.csv", Encoding.UTF8.GetBytes(Gain(LoadCircuit.None))),
            ("curves[1].file", "loaded.csv", Encoding.UTF8.GetBytes(Gain(new LoadCircuit { CableCapacitanceF = 10e-9 })))
        );
        Assert.Equal(HttpStatusCode.OK, status);
        Match found = Regex.Match(page, "Inductance at 1.00 kHz, measured</span> <strong class=\"large block\">([0-9.]+) H</strong>");
        Assert.Equal(2.5, double.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture), 0.05);
        Assert.Contains("loaded.csv over the first curve", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_table_that_is_none_stays_and_says_its_lines()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        (HttpStatusCode status, string page) = await PostAsync(
            shop,
            "/measure/curve",
            [("curves[0].text", "frequency [Hz],gain [dB]\n100,x\n50,1\n"), ("curves[1].capacitance", "much")]
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("line 2", page, StringComparison.Ordinal);
        Assert.Contains("100,x", page, StringComparison.Ordinal);
        Assert.Contains("value=\"much\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_recording_gives_the_impedance_and_its_table()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        byte[] wave = Stereo(48_000, SimulatedRecording.Of(new LogSweep(20, 20_000, 3), 48_000, s_pickup, 22e3, 1e6, 60e-12));
        (HttpStatusCode status, string page) = await PostAsync(
            shop,
            "/measure/sweep",
            [("resistor", "22k"), ("inputResistance", "1 MΩ"), ("inputCapacitance", "60"), ("length", "3")],
            ("recording", "take.wav", wave)
        );
        Assert.Equal(HttpStatusCode.OK, status);
        Match found = Regex.Match(page, "Inductance at 1.00 kHz, measured</span> <strong class=\"large block\">([0-9.]+) H</strong>");
        Assert.Equal(2.5, double.Parse(found.Groups[1].Value, CultureInfo.InvariantCulture), 0.02);
        string table = Regex.Match(page, "name=\"curve\" value=\"([^\"]+)\"").Groups[1].Value;
        using FormUrlEncodedContent back = new([new("curve", table)]);
        using HttpResponseMessage csv = await shop.Client.PostAsync(new Uri("/measure/impedance.csv", UriKind.Relative), back, Cancel);
        Assert.Equal("text/csv", csv.Content.Headers.ContentType!.MediaType);
        Assert.StartsWith("frequency [Hz],real [Ω],imaginary [Ω]", await csv.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    /// <summary>A form is 4 MB elsewhere; a recording of half a minute is larger.</summary>
    [Fact]
    public async Task A_recording_may_be_larger_than_other_forms_and_says_what_is_wrong_with_it()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        (HttpStatusCode status, string page) = await PostAsync(
            shop,
            "/measure/sweep",
            [("resistor", "")],
            ("recording", "long.wav", new byte[6 << 20])
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("which resistor stood between the two channels?", page, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(2, Regex.Count(page, "<span class=\"problem\">"));
    }

    [Fact]
    public async Task The_signal_to_play_comes_as_a_sound_file()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        using FormUrlEncodedContent form = new([new("from", ""), new("to", ""), new("length", "1 s")]);
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/measure/signal.wav", UriKind.Relative), form, Cancel);
        byte[] wave = await answer.Content.ReadAsByteArrayAsync(Cancel);
        Assert.Equal(("RIFF", 44 + 3 * 48_000), (Encoding.ASCII.GetString(wave, 0, 4), wave.Length));
    }

    [Fact]
    public async Task A_study_judges_the_meter_and_a_table_without_one_is_refused()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        const string Readings =
            "part,person,value [kΩ]\na,Mara,6.10\na,Mara,6.11\na,Joss,6.12\na,Joss,6.11\nb,Mara,6.20\nb,Mara,6.21\nb,Joss,6.22\n"
            + "b,Joss,6.20\nc,Mara,6.35\nc,Mara,6.34\nc,Joss,6.36\nc,Joss,6.35\n";
        (HttpStatusCode status, string page) = await PostAsync(shop, "/measure/gauge", [("table", Readings), ("tolerance", "0,5")]);
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("</span> Fit</span>", page, StringComparison.Ordinal);
        (_, string narrow) = await PostAsync(shop, "/measure/gauge", [("table", Readings), ("tolerance", "0.05")]);
        Assert.Contains("</span> Not fit</span>", narrow, StringComparison.Ordinal);
        (HttpStatusCode wrong, string refused) = await PostAsync(
            shop,
            "/measure/gauge",
            [("table", "part,person,value\na,Mara,x\n"), ("tolerance", "wide")]
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong);
        Assert.Contains("line 2, value", refused, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("a,Mara,x", refused, StringComparison.Ordinal);
        Assert.Contains("value=\"wide\"", refused, StringComparison.Ordinal);
    }

    /// <summary>Lot of 500, level II, 1 %: 50 pieces, accept 1, refuse 2 (MIL-STD-105E, code letter H, normal).</summary>
    [Fact]
    public async Task A_plan_says_how_many_to_look_at()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        string page = await GetAsync(shop, "/measure/sample?lot=500&aql=1&inspection=normal&level=II");
        Assert.Contains(
            "Look at 50 of 500 pieces. Accept with 1 defective or fewer, refuse with 2 or more.",
            page,
            StringComparison.Ordinal
        );
        Assert.Contains("MIL-STD-105E", page, StringComparison.Ordinal);
        Assert.Contains("Measure ", await GetAsync(shop, "/measure/sample?lot=500&aql=1&measured=yes"), StringComparison.Ordinal);
        using HttpResponseMessage wrong = await shop.Client.GetAsync(
            new Uri("/measure/sample?lot=one&aql=1&level=II", UriKind.Relative),
            Cancel
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
    }

    private static async Task<string> GetAsync(PagesOfShop shop, string address)
    {
        using HttpResponseMessage answer = await shop.Client.GetAsync(new Uri(address, UriKind.Relative), Cancel);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.True(answer.IsSuccessStatusCode, page);
        return page;
    }

    private static async Task<(HttpStatusCode Status, string Page)> PostAsync(
        PagesOfShop shop,
        string address,
        (string Name, string Value)[] fields,
        params (string Name, string File, byte[] Content)[] files
    )
    {
        using MultipartFormDataContent form = [];
        foreach ((HttpContent part, string name) in fields.Select(Part))
        {
            form.Add(part, name);
        }

        foreach ((HttpContent part, string name, string file) in files.Select(Part))
        {
            form.Add(part, name, file);
        }

        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri(address, UriKind.Relative), form, Cancel);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel)));
    }

    private static (HttpContent Part, string Name) Part((string Name, string Value) field) => (new StringContent(field.Value), field.Name);

    private static (HttpContent Part, string Name, string File) Part((string Name, string File, byte[] Content) file) =>
        (new ByteArrayContent(file.Content), file.Name, file.File);

    private static string Impedance() =>
        "frequency [Hz],real [Ω],imaginary [Ω]\n"
        + string.Concat(
            PickupResponse
                .LogFrequencies(50, 20_000, 120)
                .Select(hz =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{hz:R},{PickupImpedance.Ohm(s_pickup, hz).Real:R},{PickupImpedance.Ohm(s_pickup, hz).Imaginary:R}\n"
                    )
                )
        );

    /// <summary>Gain behind a source that rises by 6 dB an octave, as an exciter coil does.</summary>
    private static string Gain(LoadCircuit load) =>
        "frequency [Hz],gain [dB],phase [deg]\n"
        + string.Concat(
            PickupResponse
                .Compute(s_pickup, load, PickupResponse.LogFrequencies(50, 15_000, 200))
                .Points.Select(point =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{point.FrequencyHz:R},{point.GainDb + Rise(point.FrequencyHz):0.0000},{point.PhaseDegrees + 90:0.000}\n"
                    )
                )
        );

    private static double Rise(double hz) => 20 * Math.Log10(hz / 50);

    /// <summary>Two channels as 32-bit float.</summary>
    private static byte[] Stereo(int rateHz, double[][] channels)
    {
        int count = channels[0].Length;
        byte[] file = new byte[44 + 8 * count];
        Span<byte> at = file;
        Encoding.ASCII.GetBytes("RIFF").CopyTo(at);
        BinaryPrimitives.WriteInt32LittleEndian(at[4..], file.Length - 8);
        Encoding.ASCII.GetBytes("WAVEfmt ").CopyTo(at[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(at[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(at[20..], 3);
        BinaryPrimitives.WriteInt16LittleEndian(at[22..], 2);
        BinaryPrimitives.WriteInt32LittleEndian(at[24..], rateHz);
        BinaryPrimitives.WriteInt32LittleEndian(at[28..], rateHz * 8);
        BinaryPrimitives.WriteInt16LittleEndian(at[32..], 8);
        BinaryPrimitives.WriteInt16LittleEndian(at[34..], 32);
        Encoding.ASCII.GetBytes("data").CopyTo(at[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(at[40..], 8 * count);
        for (int i = 0; i < count; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(at[(44 + 8 * i)..], (float)channels[0][i]);
            BinaryPrimitives.WriteSingleLittleEndian(at[(48 + 8 * i)..], (float)channels[1][i]);
        }

        return file;
    }
}
