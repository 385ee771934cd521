using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Sheets;

/// <summary>One paper, said once and drawn the same on screen and in a PDF.</summary>
/// <param name="Kind">What it is, for example "Spec sheet".</param>
/// <param name="Subject">What it is of: recipe or serial.</param>
/// <param name="Heading">Shop, revision and date.</param>
/// <param name="Parts">What stands on it, in order.</param>
/// <param name="Code">What its bar code says; empty for none.</param>
public sealed record Sheet(string Kind, string Subject, SheetHeading Heading, IReadOnlyList<SheetPart> Parts, string Code = "")
{
    /// <summary>False for a paper that belongs to no revision, such as a packing list.</summary>
    public bool OfRevision { get; init; } = true;

    /// <summary>Facts of this paper alone, above the others at the top right.</summary>
    public IReadOnlyList<(string Term, string Meaning)> OwnFacts { get; init; } = [];

    /// <summary>The code of a recipe's papers: its name where bars can carry it legibly, else none.</summary>
    public static string CodeOf(string name) => name.Length <= 24 && name.All(letter => letter is >= ' ' and <= '~') ? name : "";

    /// <summary>The facts at the top right.</summary>
    public IReadOnlyList<(string Term, string Meaning)> Facts =>
        [
            .. OwnFacts,
            .. OfRevision ? [("Revision", OrNone(Heading.Revision))] : Array.Empty<(string, string)>(),
            ("Shop", OrNone(Heading.Shop)),
            ("Date", Heading.Date is { } date ? date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) : "–"),
        ];

    /// <summary>Where the sheet belongs, for the foot of every page.</summary>
    public string Where =>
        Subject
        + (Heading.Revision.Length > 0 ? ", revision " + Heading.Revision : "")
        + (Heading.Shop.Length > 0 ? ", " + Heading.Shop : "");

    private static string OrNone(string text) => text.Length > 0 ? text : "–";
}
