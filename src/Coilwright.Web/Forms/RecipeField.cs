namespace Coilwright.Web.Forms;

/// <summary>One field of the recipe form; its name is its path in the recipe document.</summary>
/// <param name="Path">For example "coils[0].winding.turns".</param>
/// <param name="Label">In workshop words.</param>
/// <param name="Hint">An example of what may be typed; empty for none.</param>
/// <param name="Choices">Words to choose from; empty for free text.</param>
/// <param name="IsNumber">True when the document holds a bare number there.</param>
/// <param name="Slider">Range of a slider beneath the field, or null.</param>
public sealed record RecipeField(
    string Path,
    string Label,
    string Hint,
    IReadOnlyList<string> Choices,
    bool IsNumber = false,
    SliderRange? Slider = null
)
{
    /// <summary>The one shape of a part that has this field, "round" for rods and screws; empty for every shape.</summary>
    public string Only { get; init; } = "";
}

/// <summary>Ends and step of a slider; the unit is put behind the number in the text field.</summary>
public sealed record SliderRange(double From, double To, double Step, string Unit);

/// <summary>Fields that belong together.</summary>
public sealed record FieldGroup(string Title, IReadOnlyList<RecipeField> Fields)
{
    /// <summary>Value of the button that takes this part away; empty for what a recipe cannot be without.</summary>
    public string TakeAway { get; init; } = "";
}

/// <summary>One of the four groups that a recipe's fields stand in.</summary>
/// <param name="Key">How the page names it to itself.</param>
/// <param name="Title">How people read it.</param>
/// <param name="Parts">Its parts; of several one is open at a time.</param>
public sealed record RecipeGroup(string Key, string Title, IReadOnlyList<FieldGroup> Parts)
{
    /// <summary>Words and values of the buttons that add a part to the group.</summary>
    public IReadOnlyList<(string Words, string Value)> Adding { get; init; } = [];
}
