using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright count, fed as a small board feeds it.</summary>
public sealed class CountTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Readings_are_turns_and_what_is_none_is_named_by_its_line()
    {
        CommandRun run = await PipedAsync("1\n2\n2\n50\nabc\n\n40\n", "count", "-");
        Assert.Equal(1, run.Exit);
        Assert.Equal(["1 turn", "2 turns", "50 turns", "40 turns"], LinesOf(run.Output));
        Assert.Contains("line 5: \"abc\" is no counter's reading", run.Error, StringComparison.Ordinal);
        Assert.Contains("line 7: the counter jumped back, from 50 to 40", run.Error, StringComparison.Ordinal);
        Assert.Contains("Rotating spindle", run.Error, StringComparison.Ordinal);
    }

    /// <summary>The stop of the set-up sheet: 8,000 turns by a counter that counts too few are 7,952 on it.</summary>
    [Fact]
    public async Task The_counters_correction_is_applied_and_the_stop_is_that_of_the_turns()
    {
        string machine = RepositoryFiles.PathOf("demo/machines/gear-winder.json");
        CommandRun run = await PipedAsync("7840\n7900\n7952\n7960\n", "count", "--machine", machine, "--stop", "8,000");
        Assert.Equal(0, run.Exit);
        string[] lines = LinesOf(run.Output);
        Assert.Equal("7,887 turns (counter 7,840), 113 to go", lines[0]);
        Assert.StartsWith("slow down: ", lines[2], StringComparison.Ordinal);
        Assert.Equal("STOP at 7,999.7 turns", lines[4]);
        Assert.EndsWith("past the stop", lines[5], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pulses_go_on_from_where_they_stood_whatever_the_line_says()
    {
        CommandRun run = await PipedAsync("\nx\n\n", "count", "--pulses", "--from", "7,996", "--stop", "8k");
        Assert.Equal(1, run.Exit); // one turn short
        Assert.Contains("7,999 turns, 1 to go", LinesOf(run.Output));
        Assert.Equal("ended 1 turn before the stop, at 7,999", LinesOf(run.Output)[^1]);
    }

    [Fact]
    public async Task A_hundred_and_eighty_thousand_pulses_are_so_many_turns()
    {
        CommandRun run = await PipedAsync(new string('\n', 180_000), "count", "--pulses");
        Assert.Equal(0, run.Exit);
        string[] lines = LinesOf(run.Output);
        Assert.Equal((180_000, "180,000 turns"), (lines.Length, lines[^1]));
    }

    [Fact]
    public async Task A_lost_link_is_taken_up_again_and_no_turn_is_lost_or_invented()
    {
        await using Board board = new("100\n120\n14", "160\n500\n"); // pulled in the middle of 140: no turn of it counts
        CommandRun count = await CommandRun.UntilAsync("STOP", "count", "--tcp", board.Address, "--stop", "500");
        Assert.Equal(130, count.Exit);
        string[] turns = [.. LinesOf(count.Output).Where(line => line.Contains(" to go", StringComparison.Ordinal))];
        Assert.Equal(["100 turns, 400 to go", "120 turns, 380 to go", "160 turns, 340 to go", "500 turns, 0 to go"], turns);
        Assert.Contains("the link to the counter is lost", count.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_problem_is_listed_at_once()
    {
        CommandRun run = await CommandRun.Of("count", "file.txt", "--stop", "-3", "--baud", "7", "--from", "5", "--tcp", "nowhere");
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains("5 problems", run.Error, StringComparison.Ordinal);
    }

    /// <summary>A small board at a winder: it sends one text after another, and the link is lost after each.</summary>
    private sealed class Board : IAsyncDisposable
    {
        private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
        private readonly Task _sent;

        public Board(params string[] texts)
        {
            _listener.Start();
            Address = FormattableString.Invariant($"127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}");
            _sent = SendAsync(texts);
        }

        public string Address { get; }

        public async ValueTask DisposeAsync()
        {
            await _sent;
            _listener.Dispose();
        }

        private async Task SendAsync(string[] texts)
        {
            foreach (string text in texts)
            {
                using TcpClient client = await _listener.AcceptTcpClientAsync(Cancel);
                await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(text), Cancel);
            }
        }
    }

    [Theory]
    [InlineData("no file", "--machine", "winder 9")]
    [InlineData("belongs to --send", "--token", "x")]
    [InlineData("belong together", "--batch", "B-7")]
    [InlineData("is not the address", "--send", "ftp://bench", "--batch", "B-7")]
    public async Task What_would_be_passed_over_in_silence_is_refused(string said, params string[] words)
    {
        CommandRun run = await CommandRun.Of(["count", "--tcp", "127.0.0.1:9", .. words]);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    private static string[] LinesOf(string output) =>
        [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.TrimEnd('\r'))];

    private static async Task<CommandRun> PipedAsync(string input, params string[] args)
    {
        ProcessStartInfo start = new("dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        start.ArgumentList.Add(typeof(Cli).Assembly.Location);
        args.ToList().ForEach(start.ArgumentList.Add);
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(Cancel),
            error = process.StandardError.ReadToEndAsync(Cancel);
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.WaitForExitAsync(Cancel);
        return new CommandRun(process.ExitCode, await output, await error);
    }
}
