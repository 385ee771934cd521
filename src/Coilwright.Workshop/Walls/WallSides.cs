namespace Coilwright.Workshop.Walls;

/// <summary>Which limits of the recipe are held against the coils.</summary>
public enum WallSides
{
    Both,
    LowerOnly,
    UpperOnly,
}
