using Coilwright.Formats.Tables;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Tests.Tables;

public sealed class ReadingTableTests
{
    [Fact]
    public void Units_in_the_heading_are_taken_for_bare_numbers_and_typed_units_win()
    {
        IReadOnlyList<ReadingRow> rows = Read(
            "tag,dcResistance [kΩ],temperature [°F],inductance [mH],inductanceAt [Hz],colour\nC-1,6.20,73.4,2400,120,red\nC-2,6k3,,,,\n"
        );

        Assert.Equal(6200, rows[0].Readings[0].Si!.Value, 1e-9);
        Assert.Equal(23, rows[0].Readings[0].TemperatureC!.Value, 1e-9);
        Assert.Equal((2.4, 120.0), (Math.Round(rows[0].Readings[1].Si!.Value, 12), rows[0].Readings[1].AtHz!.Value));
        Assert.Equal("red", rows[0].Carried["colour"]);
        Assert.Equal(6300, rows[1].Readings.Single().Si!.Value, 1e-9);
        Assert.Null(rows[1].Readings[0].TemperatureC);
    }

    [Fact]
    public void Nothing_that_is_not_understood_is_left_out_in_silence()
    {
        List<string> notes = [];
        IReadOnlyList<ReadingRow> rows = ReadingTable
            .Read(
                "tag,Inductance [H],Q,q at [Hz],L,dcResistanse [kΩ]\nC-1,2.4,6.1,3000,2.4,6\nC-2,2.4,6.1,,2.4,6\n",
                DateTimeOffset.UnixEpoch,
                notes
            )
            .Value!;
        Assert.Equal(3000, rows[0].Readings.Single(reading => reading.Quantity == "q").AtHz);
        Assert.Equal(
            [
                "The column \"Inductance\" is read as inductance.",
                "The column \"Q\" is read as q.",
                "The column \"q at\" is read as qAt.",
                "Not read: the column \"dcResistanse\"; did you mean dcResistance?",
                "Not read, but carried through as it is: L.",
                "Assumed: Q of C-2 was read at 3 kHz, since qAt is empty there.",
            ],
            notes
        );
    }

    [Fact]
    public void An_open_coil_is_kept_and_flagged() =>
        Assert.Equal(
            ("open", (double?)null),
            (Read("tag,dcResistance [kΩ]\nC-1,open\n")[0].Readings[0].Flag, Read("tag,dcResistance [kΩ]\nC-1,open\n")[0].Readings[0].Si)
        );

    [Fact]
    public void Quoted_cells_may_hold_commas_quotes_and_line_ends()
    {
        IReadOnlyList<ReadingRow> rows = Read("tag,dcResistance [kΩ],note\r\n\"C-1\",\"6.2 k\",\"said \"\"good\"\",\nthen left\"\r\n");

        Assert.Equal(6200, rows[0].Readings[0].Si!.Value, 1e-9);
        Assert.Equal("said \"good\",\nthen left", rows[0].Carried["note"]);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void Lines_are_counted_over_blank_lines_and_line_ends_inside_quotes(string end)
    {
        string[] lines = ["tag;dcResistance [kΩ];note", "", "C-1;6,2;\"one", "two; three\"", " ; ;", "C-2;lots;"];
        IReadOnlyList<Problem> problems = ReadingTable.Read(string.Join(end, lines), DateTimeOffset.UnixEpoch).Problems;

        Assert.Equal(["line 6, dcResistance"], problems.Select(problem => problem.Field));
    }

    [Fact]
    public void White_space_around_cells_does_not_belong_to_them()
    {
        IReadOnlyList<ReadingRow> rows = Read("tag , dcResistance [kΩ]\u00a0,\tnote\n\u00a0C-1, \"6.2\" ,said \"good\"\n");

        Assert.Equal(("C-1", 6200), (rows[0].Tag, Math.Round(rows[0].Readings[0].Si!.Value, 9)));
        Assert.Equal("said \"good\"", rows[0].Carried["note"]);
    }

    [Fact]
    public void Every_mistake_is_listed_with_its_line()
    {
        IReadOnlyList<Problem> problems = ReadingTable
            .Read("tag,dcResistance [kg],q\nC-1,lots,-3\n,6.2,\nC-1,6.2,5\n", DateTimeOffset.UnixEpoch)
            .Problems;

        Assert.Equal(
            ["line 1, dcResistance", "line 2, dcResistance", "line 2, q", "line 3, tag", "tag"],
            problems.Select(problem => problem.Field).Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("tag,temperature\nC-1,20\n")]
    public void A_table_without_what_it_needs_is_refused(string text) =>
        Assert.NotEmpty(ReadingTable.Read(text, DateTimeOffset.UnixEpoch).Problems);

    private static IReadOnlyList<ReadingRow> Read(string text)
    {
        ReadOutcome<IReadOnlyList<ReadingRow>> outcome = ReadingTable.Read(text, DateTimeOffset.UnixEpoch);
        Assert.Empty(outcome.Problems);
        return outcome.Value!;
    }
}
