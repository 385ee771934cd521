namespace Coilwright.Workshop.Recipes.Parts;

/// <summary>A kind of part that a recipe can be given more of.</summary>
/// <param name="Key">How a form names it.</param>
/// <param name="Word">How people name one.</param>
/// <param name="List">The list of the recipe that it stands in; of a pole, that of its coil.</param>
/// <param name="Most">How many a list of them holds at most.</param>
public sealed record RecipePart(string Key, string Word, string List, int Most)
{
    /// <summary>A row of poles in a coil.</summary>
    public static RecipePart Poles { get; } = new("poles", "row of poles", "poles", 12);

    /// <summary>A coil beside the others.</summary>
    public static RecipePart Coil { get; } = new("coil", "coil", "coils", 12);

    /// <summary>A bar magnet below.</summary>
    public static RecipePart Magnet { get; } = new("magnet", "bar magnet", "magnets", 24);

    /// <summary>A steel bar below.</summary>
    public static RecipePart Keeper { get; } = new("keeper", "keeper", "metalwork", 12);

    /// <summary>A cover over all coils.</summary>
    public static RecipePart Cover { get; } = new("cover", "cover", "metalwork", 12);

    /// <summary>A plate below.</summary>
    public static RecipePart Plate { get; } = new("plate", "base plate", "metalwork", 12);

    /// <summary>A step of finishing.</summary>
    public static RecipePart Step { get; } = new("step", "step", "steps", 20);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<RecipePart> All { get; } = [Poles, Coil, Magnet, Keeper, Cover, Plate, Step];

    /// <summary>The kind of a key; null when there is none.</summary>
    public static RecipePart? Find(string key) => All.FirstOrDefault(one => one.Key == key);
}
