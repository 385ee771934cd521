namespace Coilwright.Tests.Architecture;

/// <summary>Labels of pages say the workshop's plain word for a thing; those that readers stumbled over do not come back.</summary>
public sealed class PlainLabelsTests
{
    [Theory]
    [InlineData(">Who</label>", "Your name")]
    [InlineData(">Because</label>", "Reason")]
    [InlineData(">Take</th>", "Select")]
    [InlineData("aria-label=\"Take ", "Select")]
    [InlineData(">Apart</th>", "Difference")]
    [InlineData(">As typed</th>", "Entered as")]
    [InlineData(">What</th>", "Quantity")]
    [InlineData(">Holds</th>", "Basis")]
    [InlineData(">Through</th>", "Used as")]
    [InlineData(">Changes</th>", "Next change at")]
    [InlineData("Pack from", "Ready to pack")]
    [InlineData("Its life", "History")]
    [InlineData(">Middle</span>", "Centre line")]
    [InlineData("Take the pin off", "Unpin")]
    [InlineData("the others against it", "Compare others with this one")]
    [InlineData("told against", "compare others with this one")]
    [InlineData("Asked backwards", "Work backwards from targets")]
    [InlineData("Hold turns", "Keep turns")]
    [InlineData("hold ohms", "keep ohms")]
    [InlineData("Meant louder by", "Target level difference")]
    [InlineData("May come out since", "Basket out")]
    [InlineData("Give the piece up", "Scrap the piece")]
    [InlineData("Ended low", "Stopped early")]
    [InlineData("Take it in", "Add spool")]
    [InlineData("Bring a winder in", "Add winder")]
    [InlineData("\"Clocks\"", "In progress")]
    [InlineData(">At hand<", "Pieces available")]
    [InlineData("The run so far", "Control limits")]
    [InlineData("for nothing", "false alarm")]
    public void A_label_has_its_plain_word(string old, string plain)
    {
        string[] pages = [.. RepositoryFiles.Written(Path.Combine("src", "Coilwright.Web"), ".razor").Select(File.ReadAllText)];
        Assert.DoesNotContain(pages, page => page.Contains(old, StringComparison.Ordinal));
        Assert.Contains(pages, page => page.Contains(plain, StringComparison.Ordinal));
    }
}
