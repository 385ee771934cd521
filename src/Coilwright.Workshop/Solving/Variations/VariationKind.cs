namespace Coilwright.Workshop.Solving.Variations;

/// <summary>Ready questions about a variant of a recipe.</summary>
public enum VariationKind
{
    /// <summary>Another string spacing on the same core.</summary>
    Spacing,

    /// <summary>A longer core under the same poles.</summary>
    LongerCore,

    /// <summary>One string more than six: seven.</summary>
    SevenStrings,

    /// <summary>Four strings of a bass.</summary>
    Bass,

    /// <summary>For a left-handed instrument: mirrored.</summary>
    LeftHanded,

    /// <summary>With a metal cover.</summary>
    Cover,

    /// <summary>Other leads.</summary>
    Leads,

    /// <summary>A bobbin of another colour.</summary>
    Colour,
}
