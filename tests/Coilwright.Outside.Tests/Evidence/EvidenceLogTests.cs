using System.Diagnostics;

namespace Coilwright.Outside.Tests.Evidence;

public sealed class EvidenceLogTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("coilwright-evidence-").FullName;

    private string LogFile => Path.Combine(folder, "some.jsonl");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Recording_a_check_again_replaces_its_line_and_no_other()
    {
        EvidenceLog.RecordIn(LogFile, "peak", "a", "read", "1 %", "0.5 %");
        EvidenceLog.RecordIn(LogFile, "peak of two", "a", "read", "1 %", "0.6 %");
        EvidenceLog.RecordIn(LogFile, "peak", "a", "read", "1 %", "0.7 %");
        string[] lines = File.ReadAllLines(LogFile);
        Assert.Equal(2, lines.Length);
        Assert.Contains("0.6 %", lines[0], StringComparison.Ordinal);
        Assert.Contains("0.7 %", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Many_threads_lose_no_line()
    {
        Parallel.For(0, 60, i => EvidenceLog.RecordIn(LogFile, $"check {i}", "s", "read", "t", "r"));
        Assert.Equal(60, File.ReadAllLines(LogFile).Distinct().Count());
    }

    [Fact]
    public async Task The_table_is_sorted_and_keeps_quotes_bars_and_backslashes()
    {
        EvidenceLog.RecordIn(LogFile, "zeta", "s", "read", "t", "r");
        EvidenceLog.RecordIn(LogFile, "alpha \"a\"|b\\", "Ω source", "read", "±1 %", "0.5\\");
        (int code, string output, string table) = await MakeTable();
        Assert.True(code == 0, output);
        string[] rows = [.. table.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(1)];
        Assert.Equal(["| alpha \"a\"\\|b\\ | Ω source | read | ±1 % | 0.5\\ |", "| zeta | s | read | t | r |"], rows);
    }

    [Fact]
    public async Task A_broken_line_stops_the_table()
    {
        await File.WriteAllTextAsync(LogFile, "{\"check\":\"half\n", TestContext.Current.CancellationToken);
        (int code, _, string table) = await MakeTable();
        Assert.NotEqual(0, code);
        Assert.Equal("", table);
    }

    private async Task<(int Code, string Output, string Table)> MakeTable()
    {
        string target = Path.Combine(folder, "evidence.md");
        string root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "Coilwright.slnx")))
        {
            root = Path.GetDirectoryName(root)!;
        }

        using Process process = Process.Start(new ProcessStartInfo("bash", [Path.Combine(root, "tests", "make-evidence"), folder, target]) { RedirectStandardError = true })!;
        string output = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, output, File.Exists(target) ? await File.ReadAllTextAsync(target, TestContext.Current.CancellationToken) : "");
    }
}
