namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>What a part is, as far as it may touch others.</summary>
internal enum SolidKind
{
    Pole,
    Bar,
    Winding,

    /// <summary>The flat of a cover, or a plate: poles may pass through holes in it.</summary>
    Flat,

    /// <summary>The wall of a cover: hollow.</summary>
    Wall,
}

/// <summary>An upright part of a pickup.</summary>
/// <param name="Path">The field of the part it belongs to.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Coil">The coil it stands in, or −1.</param>
/// <param name="Index">The pole of its row.</param>
/// <param name="Shape">Seen from above, outside.</param>
/// <param name="LowM">Lower end, m.</param>
/// <param name="HighM">Upper end, m.</param>
internal sealed record SolidPart(string Path, SolidKind Kind, int Coil, int Index, PlanShape Shape, double LowM, double HighM)
{
    /// <summary>What a hollow part leaves free; null for a solid one.</summary>
    public PlanShape? Hollow { get; init; }

    /// <summary>How far two parts share heights, m.</summary>
    public double SharedHeightM(SolidPart other) => Math.Min(HighM, other.HighM) - Math.Max(LowM, other.LowM);

    /// <summary>How deep two parts reach into each other seen from above, m; zero or less when apart.</summary>
    public double ReachInto(SolidPart other)
    {
        double reach = Shape.ReachInto(other.Shape);
        if (Hollow is PlanShape mine)
        {
            reach = Math.Min(reach, other.Shape.SticksOutOf(mine));
        }

        return other.Hollow is PlanShape theirs ? Math.Min(reach, Shape.SticksOutOf(theirs)) : reach;
    }

    public bool Collides(SolidPart other) => SharedHeightM(other) > RecipeChecks.SlackM && ReachInto(other) > RecipeChecks.SlackM;
}
