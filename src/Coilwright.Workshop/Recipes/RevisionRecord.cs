namespace Coilwright.Workshop.Recipes;

/// <summary>State of a revision. A released one never changes.</summary>
public enum RevisionState
{
    Draft,
    Released,
}

/// <summary>One numbered revision of a recipe: the document as written, and who made it when and why.</summary>
/// <param name="RecipeId">Client-made id of the recipe.</param>
/// <param name="RecipeName">Name in the document.</param>
/// <param name="Number">1, 2, 3…; shown as A, B, C….</param>
/// <param name="Json">The recipe document, verbatim.</param>
/// <param name="State">Draft or released.</param>
/// <param name="Reason">Why it differs from the one before; empty for the first.</param>
/// <param name="Person">Who wrote it.</param>
/// <param name="TimeUtc">When it was last saved (draft) or released.</param>
public sealed record RevisionRecord(
    Guid RecipeId,
    string RecipeName,
    int Number,
    string Json,
    RevisionState State,
    string Reason,
    string Person,
    DateTimeOffset TimeUtc
)
{
    /// <summary>Who released it; empty for a draft.</summary>
    public string ReleasedBy { get; init; } = "";

    /// <summary>A for 1, B for 2, … Z, AA, AB….</summary>
    public string Letter => LetterOf(Number);

    /// <summary>The letter that a revision number is shown by.</summary>
    public static string LetterOf(int number)
    {
        string letters = "";
        for (int rest = number; rest > 0; rest = (rest - 1) / 26)
        {
            letters = (char)('A' + (rest - 1) % 26) + letters;
        }

        return letters;
    }
}
