using System.Globalization;
using System.Text.Json;

namespace Coilwright.Tests.Commands;

public sealed class JudgeTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    /// <summary>The demo recipe with the story's own targets: 6.20 kΩ and 2.5 H (which it has).</summary>
    private static readonly Func<string, string> s_storyTargets = json => json.Replace("6.18 kΩ", "6.20 kΩ", StringComparison.Ordinal);

    [Fact]
    public async Task Story_2_ohms_are_compared_at_20_degrees()
    {
        using JsonDocument judged = await Judge("tag,dcResistance [kΩ],temperature [°C]\nC-1,6.30,35\nC-2,8.314,30\n", exit: 1);

        Assert.Equal(5949, At20C(judged, "C-1"), 1.0); // 6.30 kΩ at 35 °C
        Assert.Equal(8000, At20C(judged, "C-2"), 1.0); // 8.314 kΩ at 30 °C
        // 5.949 is 0.27 % inside the limit of 5.933, and a typed temperature that is 1 °C off is 0.39 %
        Assert.Equal(("hold", "reject"), (VerdictOf(judged, "C-1"), VerdictOf(judged, "C-2")));
    }

    [Fact]
    public async Task Story_2_without_a_temperature_the_value_is_kept_and_its_doubt_is_said()
    {
        using JsonDocument judged = await Judge("tag,dcResistance [kΩ]\nC-1,6.20\nC-2,6.40\n", exit: 0);

        Assert.Equal(6200, At20C(judged, "C-1"), 130.0); // somewhere within ±2 %
        Assert.Contains(
            "2 %",
            string.Join(' ', Piece(judged, "C-1").GetProperty("reasons").EnumerateArray().Select(reason => reason.GetString())),
            StringComparison.Ordinal
        );
        Assert.NotEqual("pass", VerdictOf(judged, "C-2")); // 6.40 ± 2 % reaches over the limit of 6.43
    }

    [Theory]
    [InlineData("open", "open")]
    [InlineData("260", "broken-coupled")] // 0.26 MΩ
    public async Task Story_17_a_dead_coil_is_rejected_with_its_cause(string kiloOhm, string cause)
    {
        using JsonDocument judged = await Judge($"tag,dcResistance [kΩ],temperature [°C]\nC-1,{kiloOhm},20\n", exit: 1);

        Assert.Equal("reject", VerdictOf(judged, "C-1"));
        Assert.Equal(cause, Piece(judged, "C-1").GetProperty("causes")[0].GetProperty("cause").GetString());
    }

    [Fact] // R +0.6 %, L −0.4 %, Q −11 %: ohms and henries pass
    public async Task Story_15_a_piece_that_has_lost_its_Q_fails_against_the_golden_one()
    {
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz],q,qAt "
                + "[Hz]\ngolden,6.180,20,2.400,1000,6.10,3000\nP-1,6.217,20,2.390,1000,5.43,3000\nP-2,6.190,20,2.405,1000,6.05,3000\n",
            exit: 1
        );

        Assert.Equal(("pass", "reject", "pass"), (VerdictOf(judged, "golden"), VerdictOf(judged, "P-1"), VerdictOf(judged, "P-2")));
        Assert.Equal("fail: too much loss (shorted turns or added metal)", Piece(judged, "P-1").GetProperty("reasons")[0].GetString());
        string said = Piece(judged, "P-1").GetProperty("reasons")[1].GetString()!;
        Assert.Contains("+0.6 %", said, StringComparison.Ordinal);
        Assert.Contains("−0.4 %", said, StringComparison.Ordinal);
        Assert.Contains("−11.0 %", said, StringComparison.Ordinal);
        Assert.Equal("shorted-turns", Piece(judged, "P-1").GetProperty("causes")[0].GetProperty("cause").GetString());
    }

    [Fact] // 6.12 kΩ of 6.20, 2.44 H at 100 Hz, Q(3 kHz) 4.4 against 7.6
    public async Task Story_17_a_hundred_shorted_turns_are_told_against_a_golden_piece()
    {
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz],q,qAt "
                + "[Hz]\ngolden,6.20,20,2.50,100,7.6,3000\nC-1,6.12,20,2.44,100,4.4,3000\n",
            exit: 0,
            s_storyTargets
        );
        AboutAHundredTurns(judged);
    }

    [Fact]
    public async Task Story_17_a_hundred_shorted_turns_are_told_against_the_good_coils_of_the_batch()
    {
        IEnumerable<string> coils = Enumerable
            .Range(1, 9)
            .Select(number =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"G-{number},{6.20 + 0.01 * (number % 4 - 1.5):0.000},20,{2.50 + 0.006 * (number % 3 - 1):0.000},100,"
                        + $"{7.6 + 0.06 * (number % 5 - 2):0.00},3000"
                )
            );
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz],q,qAt [Hz]\n"
                + string.Join('\n', coils.Append("C-1,6.12,20,2.44,100,4.4,3000")),
            exit: 0,
            s_storyTargets
        );
        AboutAHundredTurns(judged);
        Assert.All(Enumerable.Range(1, 9), number => Assert.Equal("pass", VerdictOf(judged, $"G-{number}")));
    }

    [Fact]
    public async Task Charts_of_the_run_are_written_on_asking()
    {
        using TestFolder folder = new();
        IEnumerable<string> coils = Enumerable
            .Range(1, 60)
            .Select(number =>
                FormattableString.Invariant($"C-{number:00},{(number > 50 ? 6.26 : 6.18) + 0.012 * ((number * 7 % 5) - 2):0.000},20")
            );
        string readings = folder.Write("readings.csv", "tag,dcResistance [kΩ],temperature [°C]\n" + string.Join('\n', coils));
        CommandRun run = await CommandRun.Of("judge", s_harbour, readings, "--charts", "--json"),
            plain = await CommandRun.Of("judge", s_harbour, readings, "--charts", "--group", "5");
        Assert.Empty(Schemas.Complaints("judgement.json", run.Output));
        using JsonDocument judged = JsonDocument.Parse(run.Output);
        JsonElement chart = judged.RootElement.GetProperty("chart");
        Assert.Equal(
            ["single coils", "moving range", "moving average", "cumulative sums"],
            chart.GetProperty("charts").EnumerateArray().Select(one => one.GetProperty("name").GetString()!)
        );
        Assert.Contains(chart.GetProperty("charts")[3].GetProperty("signals").EnumerateArray(), signal =>
            string.CompareOrdinal(signal.GetProperty("tag").GetString(), "C-50") > 0
        );
        Assert.Equal(
            ["Cp", "Cpk", "Pp", "Ppk"],
            chart.GetProperty("capability").EnumerateArray().Select(one => one.GetProperty("index").GetString()!)
        );
        Assert.Contains("means of subgroups", plain.Output, StringComparison.Ordinal);
        Assert.Contains("one false alarm in 370.4 points", plain.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_thin_spool_is_blamed_on_the_spool_and_a_short_among_its_coils_is_still_found()
    {
        IEnumerable<string> coils = Enumerable
            .Range(1, 12)
            .Select(number =>
                FormattableString.Invariant($"C-{number:00},{6.40 + 0.01 * (number % 4 - 1.5):0.000},20,2.40,1000,6.0,3000,S-7")
            );
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz],q,qAt [Hz],spool\n"
                + string.Join('\n', coils.Append("C-13,6.32,20,2.34,1000,3.5,3000,S-7")),
            exit: 0
        );

        JsonElement spool = judged.RootElement.GetProperty("batch")[1];
        Assert.Equal("wire-off", spool.GetProperty("finding").GetString());
        Assert.Contains("thin wire", spool.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Equal("measure 10 m off the spool", spool.GetProperty("check").GetString());
        Assert.Equal("none", Piece(judged, "C-03").GetProperty("causes")[0].GetProperty("cause").GetString());
        Assert.Equal("shorted-turns", Piece(judged, "C-13").GetProperty("causes")[0].GetProperty("cause").GetString());
        Assert.Equal(91.75, judged.RootElement.GetProperty("chart").GetProperty("falseAlarmEvery").GetDouble());
    }

    [Theory] // 5.841 kΩ and 1.57 H of 6.18 kΩ and 2.53 H
    [InlineData(0)]
    [InlineData(12)]
    public async Task Readings_that_do_not_agree_are_held_and_read_again_alone_or_in_a_batch(int others)
    {
        IEnumerable<string> coils = Enumerable
            .Range(1, others)
            .Select(number =>
                FormattableString.Invariant(
                    $"G-{number},{6.28 + 0.01 * (number % 4 - 1.5):0.000},23.5,{2.53 + 0.006 * (number % 3 - 1):0.000},1000"
                )
            );
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz]\n"
                + string.Join('\n', coils.Append("C-1,5.841,23.5,1.57,1000")),
            exit: 0
        );

        JsonElement piece = Piece(judged, "C-1"),
            first = piece.GetProperty("causes")[0];
        Assert.Equal(
            ("hold", "meter-error", "the readings do not agree: no single cause explains both; read both again"),
            (VerdictOf(judged, "C-1"), first.GetProperty("cause").GetString(), first.GetProperty("detail").GetString())
        );
        Assert.Equal("read again before it is judged", piece.GetProperty("reasons")[0].GetString());
    }

    [Fact] // R ½, L ¼
    public async Task Half_the_turns_are_a_wrong_count()
    {
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz]\nC-1,3.09,20,0.63,1000\n",
            exit: 1
        );
        JsonElement first = Piece(judged, "C-1").GetProperty("causes")[0];
        Assert.Equal(
            ("miscount", "wrong turn count: about half the turns, stopped early"),
            (first.GetProperty("cause").GetString(), first.GetProperty("detail").GetString())
        );
    }

    [Fact] // 2.53 H in the winding, 2.55 H on a meter
    public async Task Coils_at_the_recipes_own_forecast_have_nothing_wrong()
    {
        IEnumerable<string> coils = Enumerable
            .Range(1, 12)
            .Select(number =>
                FormattableString.Invariant(
                    $"G-{number},{6.18 + 0.01 * (number % 4 - 1.5):0.000},20,{2.55 + 0.006 * (number % 3 - 1):0.000},1000"
                )
            );
        foreach (string table in new[] { coils.First(), string.Join('\n', coils) })
        {
            using JsonDocument judged = await Judge(
                "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz]\n" + table,
                exit: 0
            );
            Assert.All(judged.RootElement.GetProperty("pieces").EnumerateArray(), piece =>
                Assert.Equal("none", piece.GetProperty("causes")[0].GetProperty("cause").GetString())
            );
        }
    }

    [Fact]
    public async Task An_inductance_off_for_the_whole_batch_is_said_once_and_blames_no_coil()
    {
        IEnumerable<string> coils = Enumerable
            .Range(1, 12)
            .Select(number =>
                FormattableString.Invariant(
                    $"G-{number},{6.18 + 0.01 * (number % 4 - 1.5):0.000},20,{2.575 + 0.006 * (number % 3 - 1):0.000},1000"
                )
            );
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz]\n" + string.Join('\n', coils),
            exit: 0
        );
        Assert.Equal(
            ["the whole batch reads about 3 % over the target inductance: target, meter or magnets, not single coils"],
            judged.RootElement.GetProperty("remarks").EnumerateArray().Select(remark => remark.GetString()!)
        );
        Assert.All(judged.RootElement.GetProperty("pieces").EnumerateArray(), piece =>
            Assert.Equal("none", piece.GetProperty("causes")[0].GetProperty("cause").GetString())
        );
    }

    [Theory]
    [InlineData("61.8", "hold")] // one range too high
    [InlineData("0.618", "hold")]
    [InlineData("8.0", "reject")] // no slip of a range
    public async Task A_slip_of_the_range_is_read_again_before_a_coil_is_rejected(string kiloOhm, string verdict)
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "judge",
            s_harbour,
            folder.Write(
                "readings.csv",
                $"tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz]\nC-1,{kiloOhm},20,2.5,1000\n"
            ),
            "--json"
        );
        using JsonDocument judged = JsonDocument.Parse(run.Output);
        Assert.Equal(verdict, VerdictOf(judged, "C-1"));
    }

    [Fact]
    public async Task No_key_of_the_file_format_is_printed()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "judge",
            s_harbour,
            folder.Write(
                "readings.csv",
                "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz]\nC-1,open,20,,\nC-2,260k,20,,\n"
            )
        );
        CommandRun odd = await CommandRun.Of(
            "judge",
            s_harbour,
            folder.Write("odd.csv", "tag,dcResistance [kΩ],temperature [°C],inductance [H],inductanceAt [Hz]\nC-1,5.841,23.5,1.57,1000\n")
        );
        Assert.DoesNotContain("meter error", odd.Output, StringComparison.Ordinal);
        Assert.DoesNotMatch("open Ω|260k kΩ", run.Output);
        Assert.DoesNotContain("open: open", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("broken coupled", run.Output, StringComparison.Ordinal);
        Assert.Contains("open: reheat the joints first", run.Output, StringComparison.Ordinal);
        Assert.Contains("probably broken wire: the meter sees only the coil's stray capacitance", run.Output, StringComparison.Ordinal);
        Assert.Contains("the readings do not agree: no single cause explains both; read both again", odd.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Half_and_a_quarter_of_a_series_pair_are_told_from_the_whole()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "judge",
            RepositoryFiles.PathOf("demo", "recipes", "breakwater-twin.json"),
            folder.Write("readings.csv", "tag,dcResistance [kΩ],temperature [°C]\nP-1,3.9,20\nP-2,1.95,20\nP-3,7.8,20\n"),
            "--json"
        );
        using JsonDocument judged = JsonDocument.Parse(run.Output);
        Assert.Equal(
            ["coil-bridged", "wired-parallel", "none"],
            judged
                .RootElement.GetProperty("pieces")
                .EnumerateArray()
                .Select(piece => piece.GetProperty("causes")[0].GetProperty("cause").GetString()!)
        );
    }

    [Fact]
    public async Task A_reading_nearer_to_the_limit_than_the_meter_knows_is_held()
    {
        using TestFolder folder = new();
        string readings = folder.Write("readings.csv", "tag,dcResistance [kΩ],temperature [°C]\nC-1,6.40,20\n");
        // the limit is 6.427, and 1 °C is 0.39 %
        CommandRun sure = await CommandRun.Of("judge", s_harbour, readings, "--json"),
            coarse = await CommandRun.Of("judge", s_harbour, readings, "--meter", "0.5", "--json");
        Assert.Contains("\"pass\"", sure.Output, StringComparison.Ordinal);
        Assert.Contains("\"hold\"", coarse.Output, StringComparison.Ordinal);
        Assert.Contains("allowance of the meter and ±1 °C ±0.64 %", coarse.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Columns_of_the_shops_own_are_carried_through()
    {
        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C],colour\nC-1,6.18,20,red\n",
            exit: 0,
            said: "Not read, but carried through as it is: colour."
        );

        Assert.Equal("red", Piece(judged, "C-1").GetProperty("columns").GetProperty("colour").GetString());
    }

    [Fact]
    public async Task Story_5_drift_is_signalled_before_it_is_scrap()
    {
        IEnumerable<string> steady = Enumerable
            .Range(1, 50)
            .Select(number => FormattableString.Invariant($"C-{number:00},{6.18 + 0.012 * ((number * 7 % 5) - 2):0.000},20"));
        IEnumerable<string> drifted = Enumerable
            .Range(51, 10)
            .Select(number => FormattableString.Invariant($"C-{number:00},{6.29 + 0.012 * ((number * 7 % 5) - 2):0.000},20"));

        using JsonDocument judged = await Judge(
            "tag,dcResistance [kΩ],temperature [°C]\n" + string.Join('\n', steady.Concat(drifted)),
            exit: 0
        );

        string[] tags =
        [
            .. judged
                .RootElement.GetProperty("chart")
                .GetProperty("signals")
                .EnumerateArray()
                .Select(signal => signal.GetProperty("tag").GetString()!),
        ];
        Assert.NotEmpty(tags);
        Assert.All(tags, tag => Assert.True(string.CompareOrdinal(tag, "C-50") > 0, tag + " is before the drift"));
        Assert.True(string.CompareOrdinal(tags.Min(StringComparer.Ordinal), "C-54") <= 0, "the fourth off-centre coil at the latest");
    }

    private static void AboutAHundredTurns(JsonDocument judged)
    {
        JsonElement cause = Piece(judged, "C-1").GetProperty("causes")[0];
        Assert.Equal("shorted-turns", cause.GetProperty("cause").GetString());
        string detail = cause.GetProperty("detail").GetString()!;
        Assert.Matches("^about (90|95|100|110) shorted turns suspected$", detail);
        // a finger across the clips (about 420 kΩ) takes as much of R, L and Q: it is held and read again, and a second reading decides
        Assert.Equal("hold", VerdictOf(judged, "C-1"));
        Assert.Equal("read again before it is judged", Piece(judged, "C-1").GetProperty("reasons")[0].GetString());
        Assert.StartsWith(detail + "; or finger", Piece(judged, "C-1").GetProperty("cause").GetString(), StringComparison.Ordinal);
        Assert.StartsWith("read the ohms once more", Piece(judged, "C-1").GetProperty("check").GetString(), StringComparison.Ordinal);
    }

    private static async Task<JsonDocument> Judge(string table, int exit, Func<string, string>? change = null, string said = "")
    {
        using TestFolder folder = new();
        string recipe = change is null ? s_harbour : folder.Write("recipe.json", change(await File.ReadAllTextAsync(s_harbour)));
        CommandRun run = await CommandRun.Of("judge", recipe, folder.Write("readings.csv", table), "--json");
        Assert.Equal((exit, said), (run.Exit, run.Error.TrimEnd()));
        Assert.Empty(Schemas.Complaints("judgement.json", run.Output));
        return JsonDocument.Parse(run.Output);
    }

    private static JsonElement Piece(JsonDocument judged, string tag) =>
        judged.RootElement.GetProperty("pieces").EnumerateArray().Single(piece => piece.GetProperty("tag").GetString() == tag);

    private static string? VerdictOf(JsonDocument judged, string tag) => Piece(judged, tag).GetProperty("verdict").GetString();

    private static double At20C(JsonDocument judged, string tag) =>
        Piece(judged, tag).GetProperty("dcResistanceAt20C").GetProperty("value").GetDouble();
}
