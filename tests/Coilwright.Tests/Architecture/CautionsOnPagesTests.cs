using System.Text.RegularExpressions;

namespace Coilwright.Tests.Architecture;

/// <summary>
/// Pages warn by what is done on them, through the one function, and end with the line that defers to data sheets, codes and licensed
/// practice.
/// </summary>
public sealed partial class CautionsOnPagesTests
{
    private const string Closing = "Cautions.ClosingLine";

    /// <summary>Pages on which someone is told to do what can hurt, and what that is.</summary>
    [Theory]
    [InlineData("WindPage", "Job.Winding")]
    [InlineData("BatchPage", "Job.Winding")]
    [InlineData("MachinesPage", "Job.RunningWinder")]
    [InlineData("SpoolsPage", "Job.MeasuringWire")]
    [InlineData("EntryPage", "Job.ReadingCoil")]
    [InlineData("CoilPage", "Job.ReadingCoil")]
    [InlineData("AssemblyPage", "Job.Assembly")]
    [InlineData("ClocksPage", "station.Cautions", "Job.Marking", "<PieceChooser")]
    [InlineData("PieceChooser", "Board.BathCautions", "<ChargeFields")]
    [InlineData("BasketMore", "Cautions.ForBath(Basket.Record.Kind)")]
    [InlineData("ChargeFields", "Job.Charging")]
    [InlineData("PieceCharge", "<ChargeFields")]
    [InlineData("TestPage", "Job.Testing")]
    [InlineData("PiecePage", "Job.Handling", "Job.Mending", "Job.Testing", "<PieceCharge")]
    [InlineData("SetsPage", "Job.Handling")]
    [InlineData("MagnetsPage", "Job.Charging", "<ChargeFields")]
    [InlineData("MeasureResonancePage", "Job.Testing")]
    [InlineData("MeasureSweepPage", "Job.Testing")]
    public void A_page_warns_of_what_is_done_on_it(string page, params string[] wanted)
    {
        string text = File.ReadAllText(
            RepositoryFiles.Written("src", ".razor").Single(path => Path.GetFileNameWithoutExtension(path) == page)
        );
        Assert.All(wanted, asked =>
            Assert.Contains(
                asked.StartsWith("Job.", StringComparison.Ordinal) ? $"<CautionNotes Of=\"Cautions.For({asked})\"" : asked,
                text,
                StringComparison.Ordinal
            )
        );
    }

    [Fact]
    public void Every_page_with_cautions_ends_with_the_closing_line() =>
        Assert.Empty(
            Pages()
                .Where(page =>
                    page.Name.EndsWith("Page", StringComparison.Ordinal)
                    && page.Text.Contains("<CautionNotes", StringComparison.Ordinal)
                    && !Closes(page.Text)
                )
                .Select(page => page.Name)
        );

    /// <summary>
    /// The box is for hazards alone: what is drawn as a caution comes from the one function, but for a shop's clock that cannot be trusted,
    /// on which holds rest, and a step that such a clock ended early.
    /// </summary>
    [Fact]
    public void A_harmless_note_never_uses_the_caution_box()
    {
        string[] boxes =
        [
            .. Pages().SelectMany(page => Box().Matches(page.Text)).Select(box => box.Groups[1].Value.Trim()).Order(StringComparer.Ordinal),
        ];
        Assert.Equal(["@caution", "@doubt"], boxes[..2]);
        // wax may be hot still, ink soft
        Assert.Contains("ended by a clock that was ahead", Assert.Single(boxes[2..]), StringComparison.Ordinal);
        Assert.Equal(
            ["Nothing to hold it against"],
            Box()
                .Matches("<p class=\"caution\"><strong>Caution</strong> Nothing to hold it against</p>")
                .Select(box => box.Groups[1].Value.Trim())
        ); // the guard sees one
        Assert.False(Closes("<CautionNotes Of=\"Cautions.For(Job.Winding)\" />"));
    }

    private static bool Closes(string text) =>
        text.Contains(Closing, StringComparison.Ordinal) || text.Contains("Last=\"true\" />", StringComparison.Ordinal);

    private static IEnumerable<(string Name, string Text)> Pages() =>
        RepositoryFiles
            .Written(Path.Combine("src", "Coilwright.Web"), ".razor")
            .Select(path => (Path.GetFileNameWithoutExtension(path), File.ReadAllText(path)));

    [GeneratedRegex("<p class=\"caution\"><strong>Caution</strong>([^<]*)</p>")]
    private static partial Regex Box();
}
