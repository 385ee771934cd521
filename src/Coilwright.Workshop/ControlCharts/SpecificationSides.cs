namespace Coilwright.Workshop.ControlCharts;

/// <summary>Which limits of the recipe are held against the coils.</summary>
public enum SpecificationSides
{
    Both,
    LowerOnly,
    UpperOnly,
}
