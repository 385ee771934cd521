using Coilwright.Formats.Notes;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Notes;
using Coilwright.Workshop.Readings;

namespace Coilwright.Application.Tests.Notes;

/// <summary>Old notes from a spreadsheet: what their columns are read as, every problem at once, and all coils or none.</summary>
public sealed class ImportNotesTests
{
    private const string German = """
        Coil no.;R (kOhm);L;Temp;Turns;Date;Remarks
        1;6,21;2,41;21;8.000;5.3.2024;
        2;6,25;2,44;21,5;8000;2024-03-05 14:30;second spool
        3;OL;;21;;6.3.2024;broke
        4;;;;;;never wound
        """;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("tag,dcResistance [kΩ]", "C-1,6.21", "tag", "DC resistance kΩ")]
    [InlineData("Coil,DCR", "C-1,6.21", "tag", "DC resistance kΩ?")]
    [InlineData("Coil,DCR", "C-1,6210", "tag", "DC resistance Ω?")]
    [InlineData("No;R/kOhm", "1;6,21", "tag", "DC resistance kΩ")]
    [InlineData("serial,DCR", "1,6.21", "-", "DC resistance kΩ?")]
    [InlineData("nr,DC resistance in ohms", "1,6210", "tag", "DC resistance Ω")]
    [InlineData("nr,L (mH)", "1,2410", "tag", "inductance mH")]
    [InlineData("nr,Inductance", "1,2410", "tag", "inductance mH?")]
    [InlineData("nr,ind.", "1,2.41", "tag", "inductance H?")]
    [InlineData("nr,room temperature", "1,70", "tag", "temperature °F?")]
    [InlineData("nr,Temp [C]", "1,21", "tag", "temperature °C")]
    [InlineData("nr,resistance", "1,6.21k", "tag", "DC resistance ?")]
    [InlineData("nr,colour of the tape", "1,red", "tag", "-")]
    public void Headings_and_numbers_say_what_a_column_is_and_what_is_assumed_is_marked(
        string head,
        string row,
        string first,
        string second
    )
    {
        NoteTable table = new($"{head}\n{row}\n", []);
        Assert.Equal([first, second], table.Columns.Select(Words));
    }

    [Fact]
    public void What_a_person_says_of_a_column_holds_against_every_guess()
    {
        NoteTable table = new("coil,R,R old,x\nC-1,6.21,6.5,2.4\n", [("r OLD", "dcResistance [kΩ]"), ("x", "inductance"), ("coil", "tag")]);
        Assert.Empty(table.Problems);
        Assert.Equal(["tag", "-", "DC resistance kΩ", "inductance H?"], table.Columns.Select(Words));

        table = new NoteTable("coil,R\nC-1,6.21\n", [("rr", "tag"), ("R", "ohmage"), ("coil", "inductance [kg]")]);
        Assert.Equal(3, table.Problems.Count);
        table = new NoteTable("coil,R\nC-1,6.21\n", [("R", "-")]);
        Assert.Contains("no column is read as a measurement", Assert.Single(table.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Notes_parted_by_semicolons_begin_a_batch_and_come_in_once()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        string file = shop.Write("old.csv", German);
        (int exit, string output, string error) = await DemoShop.RunAsync("import", file, "--dry-run");
        Assert.True(exit == 0, error);
        Assert.Contains("4 lines, columns parted by semicolons; a comma is the decimal sign", output, StringComparison.Ordinal);
        Assert.Contains("left aside", output, StringComparison.Ordinal);

        string[] words = ["import", file, "--batch", "Old 2024", "--recipe", "harbour bridge", "--shop", shop.File, "--clock-is-right"];
        (exit, output, error) = await DemoShop.RunAsync([.. words, "--dry-run"]);
        Assert.True(exit == 0, error);
        Assert.Contains(
            "This would bring 3 coils into batch Old 2024, which is begun. Nothing was written.",
            output,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(await shop.Opened.Records.Batches.AllAsync(Cancel), one => one.Name == "Old 2024");

        (exit, output, error) = await DemoShop.RunAsync(words);
        Assert.True(exit == 0, error);
        Assert.Contains("Brought 3 coils into batch Old 2024, which is begun.", output, StringComparison.Ordinal);
        Assert.Contains("nothing was measured, left aside", output, StringComparison.Ordinal);
        BatchRecord batch = (await shop.Opened.Records.Batches.AllAsync(Cancel)).Single(one => one.Name == "Old 2024");
        IReadOnlyList<ReadingRecord> readings = await shop.Opened.Records.Readings.OfBatchAsync(batch.Id, Cancel);
        Assert.Equal(
            [
                ("001", "dcResistance", "6,21", 6210.0, 21.0, 8000.0),
                ("001", "inductance", "2,41", 2.41, 21.0, null),
                ("002", "dcResistance", "6,25", 6250.0, 21.5, 8000.0),
                ("002", "inductance", "2,44", 2.44, 21.5, null),
                ("003", "dcResistance", "OL", null, 21.0, (double?)null),
            ],
            readings.Select(one => (one.Tag, one.Quantity, one.Typed, one.Si, one.TemperatureC, one.Turns))
        );
        Assert.All(readings, one => Assert.Equal(2024, one.TimeUtc.Year));
        Assert.Equal("open", readings[^1].Flag);

        (exit, output, _) = await DemoShop.RunAsync("import", file, "--batch", "Old 2024", "--shop", shop.File, "--clock-is-right");
        Assert.Equal(0, exit);
        Assert.Contains("Brought 0 coils into batch Old 2024; 3 were there already.", output, StringComparison.Ordinal);
        Assert.Equal(readings.Count, (await shop.Opened.Records.Readings.OfBatchAsync(batch.Id, Cancel)).Count);
    }

    [Fact]
    public async Task Every_problem_is_named_with_line_and_heading_and_nothing_is_stored()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        string file = shop.Write(
            "bad.csv",
            """
            Tag,R [Ω],Temp,Turns,When,L [H]
            C-001,"6,210",21,8000,05/03/2024,2.4
            C-001,6210,21,8000,2999-01-01,2.4
            ,6300,900,8000,,two
            C-004,6.3k,21,many,,2.4,more
            C-005,400 MΩ,21,8000,,9000
            """
        );
        (int exit, _, string error) = await DemoShop.RunAsync(
            "import",
            file,
            "--batch",
            "Bad",
            "--recipe",
            "Harbour bridge",
            "--shop",
            shop.File,
            "--clock-is-right"
        );
        Assert.Equal(2, exit);
        Assert.All(
            [
                "line 2, R [Ω]: in a table parted by commas the point alone is the decimal sign",
                "line 2, When: this time cannot be read, or can mean two days; understood: 05/03/2024",
                "line 3, Tag: line 2 has this tag already",
                "line 3, When: this time is still to come",
                "line 4, Tag: a coil needs a tag",
                "line 4, Temp: this temperature is not possible",
                "line 4, L [H]:",
                "line 5, Turns:",
                "line 5: more cells than there are headings",
                "line 6, L [H]: no coil reads that",
            ],
            said => Assert.Contains(said, error, StringComparison.Ordinal)
        );
        Assert.DoesNotContain(await shop.Opened.Records.Batches.AllAsync(Cancel), one => one.Name == "Bad");
    }

    [Fact]
    public async Task A_batch_that_is_there_takes_no_more_than_it_wants_and_no_tag_twice()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        string file = shop.Write("more.csv", "coil,kΩ\n1,6.2\n5,6.3\n11,6.3\n");
        (int exit, _, string error) = await DemoShop.RunAsync("import", file, "--batch", "b-7", "--shop", shop.File, "--clock-is-right");
        Assert.Equal(2, exit);
        Assert.Contains("line 2, coil: batch B-7 has a coil of this tag already; understood: BL-001", error, StringComparison.Ordinal);
        Assert.Contains("line 4, coil: ", error, StringComparison.Ordinal);
        Assert.Contains("BL-011 would be one more than is wanted", error, StringComparison.Ordinal);
        Assert.DoesNotContain("line 3", error, StringComparison.Ordinal);
    }

    private static string Words(NoteColumn column)
    {
        if (column.Role is not { } role)
        {
            return "-";
        }

        string name = role == NoteRole.Tag ? "tag" : $"{role.Label} {column.Unit}";
        return column.UnitFrom.Length > 0 ? name + "?" : name;
    }
}
