using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Application.Listening;

/// <summary>How many strings are played.</summary>
public enum Playing
{
    /// <summary>One string.</summary>
    One,

    /// <summary>All open strings, the lowest first.</summary>
    Strum,
}

/// <summary>A design to hear.</summary>
/// <param name="RecipeId">The recipe; its newest revision is heard.</param>
/// <param name="LoadKey">Key of a usual load, or <see cref="Unloaded"/>.</param>
public sealed record ListenChoice(Guid RecipeId, string LoadKey)
{
    /// <summary>Nothing hangs on the pickup.</summary>
    public const string Unloaded = "none";

    /// <summary>Keys and names of all loads.</summary>
    public static IReadOnlyList<(string Key, string Name)> Loads { get; } =
    [
        .. UsualLoad.All.OrderBy(load => load.Key == UsualLoad.Player.Key ? 0 : 1).Select(load => (load.Key, load.Name)),
        (Unloaded, "Nothing on it"),
    ];

    /// <summary>The load; null for a key that is not known.</summary>
    internal LoadCircuit? Load => LoadKey == Unloaded ? LoadCircuit.None : UsualLoad.All.FirstOrDefault(load => load.Key == LoadKey)?.Load;
}

/// <summary>Designs of the shop to hear one against the other.</summary>
/// <param name="Designs">Up to four, with their places on the page; null for a place left empty.</param>
/// <param name="Playing">How many strings are played.</param>
/// <param name="Pluck">What is played.</param>
/// <param name="Matched">True to bring all to one level, false to keep what one has more than the other.</param>
public sealed record ListenQuestion(IReadOnlyList<ListenChoice?> Designs, Playing Playing, PluckQuestion Pluck, bool Matched)
{
    /// <summary>Most designs at a time.</summary>
    public const int MostDesigns = 4;

    /// <summary>Length of the sound unless another is said, s.</summary>
    public const double UsualDurationS = 4;
}
