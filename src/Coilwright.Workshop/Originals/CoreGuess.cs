namespace Coilwright.Workshop.Originals;

/// <summary>What cores of unknown material may be, and how common each is: our assumption, no source.</summary>
internal static class CoreGuess
{
    /// <summary>Stands in the recipe for a material that is not known.</summary>
    public const string Placeholder = "alnico-5";

    /// <summary>Note on a pole whose material stands for the time being.</summary>
    public const string Mark = "material not known";

    public static IReadOnlyList<(string Material, double Prior)> All { get; } =
        [("alnico-5", 0.45), ("low-carbon-steel", 0.2), ("alnico-2", 0.13), ("alnico-3", 0.1), ("alnico-4", 0.06), ("alnico-8", 0.04), ("ferrite", 0.02)];
}
