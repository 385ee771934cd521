using System.Diagnostics;
using Xunit.Sdk;

namespace Coilwright.Outside.Tests.Tables;

/// <summary>The helper that asserts and records at once, and the tables made of its lines.</summary>
public sealed class EvidenceTests : IDisposable
{
    private const string Because = "rounding: of nothing";
    private readonly string folder = Directory.CreateTempSubdirectory("coilwright-evidence-").FullName;

    private string LogFile => Path.Combine(folder, "some.jsonl");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void What_is_printed_as_allowed_is_what_was_held()
    {
        Of("relative").WithinPart(1.004, 1, 0.005).WithinPart(0.98, 1, 0.05).Record();
        Of("absolute").Within(91.7512, 91.75, 0.005, "Ω").Record();
        Of("inside").Inside(95, 93, 97, "%").Inside(94, 93, 97, "%").Record();
        Of("uneven").BetweenParts(0.995, 1, -0.01, 0.001).Record();
        Of("holds").Holds(0.83, 0.89, 0.854, "H").Record("second-hand");
        Of("same").Same(5, 5).Same("a", "a").Record();
        string[] lines = File.ReadAllLines(LogFile);
        Assert.Contains("\"allowed\":\"± 0.5 % … ± 5 %\",\"found\":\"+0.40 % of ± 0.5 % (2 values)\"", lines[0], StringComparison.Ordinal);
        Assert.Contains("\"allowed\":\"91.75 ± 0.005 Ω\",\"found\":\"91.7512 Ω\"", lines[1], StringComparison.Ordinal);
        Assert.Contains("\"allowed\":\"93 to 97 %\",\"found\":\"94.0 to 95.0 % (2 values)\"", lines[2], StringComparison.Ordinal);
        Assert.Contains("\"allowed\":\"-1.00 % to +0.10 %\",\"found\":\"-0.50 %\"", lines[3], StringComparison.Ordinal);
        Assert.Contains("\"allowed\":\"holds 0.854 H\",\"found\":\"0.830 to 0.890 H; second-hand\"", lines[4], StringComparison.Ordinal);
        Assert.Contains("\"allowed\":\"exact\",\"found\":\"all 2 the same\"", lines[5], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.0051)]
    [InlineData(0.9949)]
    [InlineData(double.NaN)]
    public void A_check_that_fails_leaves_no_line_and_takes_its_old_one_away(double found)
    {
        Of("peak").WithinPart(1, 1, 0.005).Record();
        Assert.ThrowsAny<XunitException>(() => Of("peak").WithinPart(found, 1, 0.005));
        Assert.Empty(File.ReadAllLines(LogFile));
        Assert.ThrowsAny<XunitException>(() => Of("peak").Inside(found, 0.995, 1.005));
        Assert.ThrowsAny<XunitException>(() => Of("peak").BetweenParts(found, 1, -0.005, 0.005));
        Assert.ThrowsAny<XunitException>(() => Of("peak").Within(found, 1, 0.005));
        Assert.ThrowsAny<XunitException>(() => Of("peak").Holds(0.995, 1.005, found));
        Assert.ThrowsAny<XunitException>(() => Of("peak").Same(found, 1));
    }

    [Fact]
    public void A_check_that_held_nothing_fails() => Assert.ThrowsAny<XunitException>(() => Of("peak").Record());

    [Fact]
    public void A_standing_or_a_ground_that_nobody_defined_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Evidence.Outside("a", "s", "arithmetic", Because, file: LogFile));
        Assert.Throws<ArgumentException>(() => Evidence.Outside("a", "s", "read", "because it fits", file: LogFile));
    }

    [Fact]
    public void Recording_a_check_again_replaces_its_line_and_no_other()
    {
        Of("peak").Within(1, 1, 0.1).Record();
        Of("peak of two").Within(2, 2, 0.1).Record();
        Of("peak").Within(3, 3, 0.1).Record();
        string[] lines = File.ReadAllLines(LogFile);
        Assert.Equal(2, lines.Length);
        Assert.Contains("2 ± 0.1", lines[0], StringComparison.Ordinal);
        Assert.Contains("3 ± 0.1", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Many_threads_lose_no_line()
    {
        Parallel.For(0, 60, i => Of($"check {i}").Same(1, 1).Record());
        Assert.Equal(60, File.ReadAllLines(LogFile).Distinct().Count());
    }

    [Fact]
    public async Task The_tables_are_sorted_stand_apart_and_keep_quotes_bars_and_backslashes()
    {
        Of("zeta").Same(1, 1).Record();
        Evidence.Outside("alpha \"a\"|b\\", "Ω source", "memory", Because, id: "first", file: LogFile).Same(1, 1).Record("0.5\\");
        Evidence.Own("beta", "engine", "ratchet", file: LogFile).Same(1, 1).Record();
        (int code, string output, string table) = await MakeTable();
        Assert.True(code == 0, output);
        string[] rows =
        [
            .. table
                .Split('\n')
                .Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| Check", StringComparison.Ordinal)),
        ];
        Assert.Equal(
            [
                "| <a id=\"first\"></a>alpha \"a\"\\|b\\ | Ω source | memory | exact | the same; 0.5\\ | rounding: of nothing |",
                "| zeta | s | read | exact | the same | rounding: of nothing |",
                "| beta | engine | exact | the same | ratchet |",
            ],
            rows
        );
        Assert.True(table.IndexOf("| beta", StringComparison.Ordinal) > table.IndexOf("## Consistency", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_broken_line_stops_the_table()
    {
        await File.WriteAllTextAsync(LogFile, "{\"table\":\"half\n", TestContext.Current.CancellationToken);
        (int code, _, string table) = await MakeTable();
        Assert.NotEqual(0, code);
        Assert.Equal("", table);
    }

    private Evidence Of(string check) => Evidence.Outside(check, "s", "read", Because, file: LogFile);

    private async Task<(int Code, string Output, string Table)> MakeTable()
    {
        string target = Path.Combine(folder, "evidence.md");
        string root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "Coilwright.slnx")))
        {
            root = Path.GetDirectoryName(root)!;
        }

        using Process process = Process.Start(
            new ProcessStartInfo("bash", [Path.Combine(root, "tests", "make-evidence"), folder, target]) { RedirectStandardError = true }
        )!;
        string output = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (
            process.ExitCode,
            output,
            File.Exists(target) ? await File.ReadAllTextAsync(target, TestContext.Current.CancellationToken) : ""
        );
    }
}
