using System.Diagnostics;
using System.Globalization;
using System.Text;
using Coilwright.Formats.Tables;
using Coilwright.Workshop.Entry;

namespace Coilwright.Tests.Commands;

/// <summary>Whatever stands in a cell, an option or a file, a command ends with words and never with a fault of its own.</summary>
public sealed class SaneInputTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    private static readonly string[] s_wild = ["1e308", "-1e308", "NaN", "Infinity", "-1", "", "1e-308", "0", "1,5", "8.000"];

    /// <summary>Tables with one cell that is filled with each wild value.</summary>
    private static readonly (string[] Command, string Table)[] s_tables =
    [
        (["judge", s_harbour, "FILE", "--json"], "tag,dcResistance [kΩ],temperature [°C],turns\nC-1,?,20,8000\nC-2,6.2,20,8000\n"),
        (["judge", s_harbour, "FILE"], "tag,dcResistance [kΩ],temperature [°C],turns\nC-1,6.2,?,8000\n"),
        (["judge", s_harbour, "FILE", "--charts"], "tag,dcResistance [kΩ],temperature [°C],turns\nC-1,6.2,20,?\n"),
        (
            ["judge", s_harbour, "FILE", "--json"],
            "tag,dcResistance [kΩ],inductance [H],inductanceAt [Hz],q,qAt [Hz]\nC-1,6.2,?,1000,2,3000\n"
        ),
        (["judge", s_harbour, "FILE"], "tag,dcResistance [kΩ],inductance [H],inductanceAt [Hz],q,qAt [Hz]\nC-1,6.2,2.4,?,2,3000\n"),
        (["judge", s_harbour, "FILE"], "tag,dcResistance [kΩ],inductance [H],inductanceAt [Hz],q,qAt [Hz]\nC-1,6.2,2.4,1000,?,3000\n"),
        (["judge", s_harbour, "FILE"], "tag,dcResistance [kΩ],inductance [H],inductanceAt [Hz],q,qAt [Hz]\nC-1,6.2,2.4,1000,2,?\n"),
        (["gauge", "FILE", "--json"], "part,person,value [kΩ]\na,x,?\na,x,6.21\nb,x,6.3\nb,x,6.31\na,y,6.2\na,y,6.2\nb,y,6.3\nb,y,6.3\n"),
        (["gauge", "FILE", "--json"], "value,reference\n6.1,?\n6.2,6.2\n6.4,6.3\n6.5,6.5\n"),
        (["pair", "FILE", "--json"], "tag,family,dcResistance [kΩ]\na,slug,?\nb,screw,3.9\n"),
        (["fit", "FILE", "--json"], Curve("?")),
    ];

    public static TheoryData<int> Tables => [.. Enumerable.Range(0, s_tables.Length)];

    [Theory]
    [MemberData(nameof(Tables))]
    public async Task No_number_in_a_table_makes_a_command_fail(int at)
    {
        using TestFolder folder = new();
        foreach (string wild in s_wild)
        {
            string path = folder.Write(
                "table.csv",
                s_tables[at]
                    .Table.Replace("?", wild.Contains(',', StringComparison.Ordinal) ? $"\"{wild}\"" : wild, StringComparison.Ordinal)
            );
            CommandRun run = await CommandRun.Of([.. s_tables[at].Command.Select(word => word == "FILE" ? path : word)]);
            Assert.True(run.Exit is 0 or 1 or 2, $"{string.Join(' ', s_tables[at].Command)} with {wild}: {run.Exit}\n{run.Error}");
            Assert.True(run.Exit != 2 || run.Error.Contains("problem", StringComparison.Ordinal), run.Error);
            Assert.DoesNotContain("our mistake", run.Error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("tag,dcResistance [kΩ],temperature [°C]\nC-1,6.2,23600\n", "temperature")]
    [InlineData("tag,dcResistance [kΩ]\nC-1,1e308\n", "dcResistance")]
    [InlineData("tag,dcResistance [kΩ],q\nC-1,6.2,NaN\n", "q")]
    [InlineData("tag,dcResistance [kΩ]\nC-1,\"6,21\"\n", "the point alone")]
    [InlineData("tag,dcResistance [kΩ],turns\nC-1,6.2,8.000\n", "8000 without a separator")]
    public async Task A_cell_beyond_what_can_be_is_refused_in_words(string table, string word)
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of("judge", s_harbour, folder.Write("t.csv", table));
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains(word, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_gauge_study_beyond_any_gauge_is_refused_in_words()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "gauge",
            folder.Write("g.csv", "part,person,value\na,x,1e308\na,x,1\n"),
            "--reference",
            "1",
            "--json"
        );
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains("no gauge shows this", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, (await CommandRun.Of("gauge", folder.Write("h.csv", "value\n1\n2\n"), "--reference", "1e308", "--json")).Exit);
    }

    [Fact]
    public async Task A_table_of_another_program_is_read_with_semicolons_and_decimal_commas()
    {
        using TestFolder folder = new();
        CommandRun ours = await CommandRun.Of(
            "judge",
            s_harbour,
            folder.Write("a.csv", "tag,dcResistance [kΩ],temperature [°C]\nC-1,6.21,21.5\nC-2,3.05,21.5\n"),
            "--json"
        );
        CommandRun theirs = await CommandRun.Of(
            "judge",
            s_harbour,
            folder.Write("b.csv", "Tag;Resistance [kΩ];temperature [°C]\nC-1;6,21;21,5\nC-2;3,05;21,5\n"),
            "--json"
        );
        Assert.Equal((ours.Exit, ours.Output), (theirs.Exit, theirs.Output));
        Assert.Contains("\"Resistance\" is read as dcResistance", theirs.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_assumed_and_what_was_not_read_is_said()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "judge",
            s_harbour,
            folder.Write("q.csv", "tag,dcResistance [kΩ],Inductance [H],Q,Induktance\nC-1,6.2,2.4,2.1,2\n")
        );
        Assert.Contains("Q was read at 3 kHz", run.Output, StringComparison.Ordinal);
        Assert.Contains("\"Inductance\" is read as inductance", run.Output, StringComparison.Ordinal);
        Assert.Contains("\"Induktance\"; did you mean inductance?", run.Output, StringComparison.Ordinal);
        Assert.Equal(3000, ReadingTable.Read("tag,q,q at [kHz]\nC-1,2,3\n", DateTimeOffset.UnixEpoch).Value![0].Readings[0].AtHz);
    }

    [Fact]
    public async Task The_unit_of_a_reading_is_printed_once()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of(
            "judge",
            s_harbour,
            folder.Write("u.csv", "tag,dcResistance\nC-1,6.12k\nC-2,0.26M\nC-3,open\nC-4,6120\n")
        );
        string[] read =
        [
            .. run
                .Output.Split('\n')
                .Where(line => line.StartsWith("C-", StringComparison.Ordinal))
                .Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1..3])),
        ];
        Assert.Equal(["6.12 kΩ", "0.26 MΩ", "6120 Ω"], [read[0], read[1], read[3]]);
        Assert.StartsWith("open", read[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Quotes_within_a_cell_cost_no_more_than_letters()
    {
        long Allocated(int quotes)
        {
            string table = "tag,note\nC-1,a" + new string('"', quotes) + "\n";
            long before = GC.GetAllocatedBytesForCurrentThread();
            _ = ReadingTable.Read(table, DateTimeOffset.UnixEpoch);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        _ = Allocated(1000);
        long once = Allocated(20_000),
            twice = Allocated(40_000);
        // work doubles with the text; it was four times as much
        Assert.True(twice < 2.5 * once, $"{twice} bytes for 40,000 quotes, {once} for 20,000");
    }

    [Fact]
    public void A_table_longer_than_any_batch_is_refused_before_it_is_judged()
    {
        StringBuilder table = new("tag,dcResistance\n");
        for (int coil = 0; coil <= ReadingTable.MostCoils; coil++)
        {
            table.Append(CultureInfo.InvariantCulture, $"C-{coil},6200\n");
        }

        Problem problem = Assert.Single(ReadingTable.Read(table.ToString(), DateTimeOffset.UnixEpoch).Problems);
        Assert.Contains("too many coils", problem.Message, StringComparison.Ordinal);
        Assert.Contains("20,000", problem.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pipe_or_a_device_is_refused_and_never_waited_for()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no pipes with names there");
        using TestFolder folder = new();
        string pipe = folder.PathOf("pipe"),
            link = folder.PathOf("link");
        using (Process made = Process.Start("mkfifo", [pipe]))
        {
            await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        File.CreateSymbolicLink(link, pipe);
        foreach (string path in (string[])["/dev/zero", pipe, link])
        {
            CommandRun run = await CommandRun
                .Of("predict", path)
                .WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
            Assert.Equal((2, ""), (run.Exit, run.Output));
            Assert.Contains("pipe or device", run.Error, StringComparison.Ordinal);
        }

        CommandRun shop = await CommandRun
            .Of("batch", "list", "--shop", pipe)
            .WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        Assert.Equal(2, shop.Exit);
        Assert.Contains("pipe or device", shop.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2,000")]
    [InlineData("2.000")]
    [InlineData("2k")]
    [InlineData("2 000")]
    public async Task A_count_on_the_command_line_is_read_as_on_the_pages(string lot)
    {
        CommandRun plain = await CommandRun.Of("sample", "2000"),
            typed = await CommandRun.Of("sample", lot);
        Assert.Equal((plain.Exit, plain.Output), (typed.Exit, typed.Output));
        CommandRun wrong = await CommandRun.Of("sample", "many");
        Assert.Equal(2, wrong.Exit);
        Assert.Contains("is not a whole number", wrong.Error, StringComparison.Ordinal);
    }

    private static string Curve(string wild)
    {
        StringBuilder csv = new("frequency [Hz],gain [dB]\n");
        for (int i = 0; i < 30; i++)
        {
            csv.Append(CultureInfo.InvariantCulture, $"{100 * Math.Pow(1.2, i)},{(i == 7 ? wild : "0.5")}\n");
        }

        return csv.ToString();
    }
}
