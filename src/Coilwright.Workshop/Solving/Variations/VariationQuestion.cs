namespace Coilwright.Workshop.Solving.Variations;

/// <summary>A ready question: what it asks, and the one thing a person may type.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Title">As a heading.</param>
/// <param name="Asks">Label of the field; empty when nothing is typed.</param>
/// <param name="Usual">What stands in the field at first.</param>
public sealed record VariationQuestion(VariationKind Kind, string Title, string Asks, string Usual)
{
    /// <summary>Every question, in the order they are asked most.</summary>
    public static IReadOnlyList<VariationQuestion> All { get; } =
    [
        new(VariationKind.Spacing, "Another string spacing, same core", "String to string", "9.8 mm"),
        new(VariationKind.LongerCore, "A longer core, same poles", "Longer by", "2.8 mm"),
        new(VariationKind.SevenStrings, "Seven strings", "", ""),
        new(VariationKind.Bass, "Bass, four strings", "String to string", "19 mm"),
        new(VariationKind.LeftHanded, "Left-handed", "", ""),
        new(VariationKind.Cover, "With a cover", "Material", "nickel silver"),
        new(VariationKind.Leads, "Other leads", "Leads", "two single, 0.6 m"),
        new(VariationKind.Colour, "Bobbin of another colour", "Colour", "white"),
    ];

    /// <summary>The question with this word as its key, for example "longerCore"; null when there is none.</summary>
    public static VariationQuestion? Find(string key) =>
        All.FirstOrDefault(question => string.Equals(question.Key, key, StringComparison.OrdinalIgnoreCase));

    /// <summary>The word it goes by in an address.</summary>
    public string Key => char.ToLowerInvariant(Kind.ToString()[0]) + Kind.ToString()[1..];
}
