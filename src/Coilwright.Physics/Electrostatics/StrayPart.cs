namespace Coilwright.Physics.Electrostatics;

/// <summary>A conducting part near the coils, as the electric field sees it. SI units, the recipe's axes.</summary>
/// <param name="Plan">Its outline from above.</param>
/// <param name="TopM">z of its upper end.</param>
/// <param name="BottomM">z of its lower end.</param>
/// <param name="Coil">The coil it stands in; −1 for what stands in none.</param>
internal sealed record StrayPart(PlanOutline Plan, double TopM, double BottomM, int Coil)
{
    /// <summary>As the recipe says it; null when it says nothing.</summary>
    public bool? Grounded { get; init; }

    /// <summary>What is taken where the recipe says nothing: covers and plates are grounded, the rest is not.</summary>
    public bool UsuallyGrounded { get; init; }

    /// <summary>Thickness of the walls of a cover, open below; zero for what is solid.</summary>
    public double WallM { get; init; }

    /// <summary>Parts that touch share a number.</summary>
    public int Group { get; set; }

    public bool IsCover => WallM > 0;

    /// <summary>Inside of a cover's walls.</summary>
    public PlanOutline Inside => Plan.Grown(-WallM);

    /// <summary>Height of the inside of a cover's top.</summary>
    public double CeilingM => TopM - WallM;

    /// <summary>Height of the face that looks down on what lies below: a cover's ceiling, else the lower end.</summary>
    public double FacingDownM => IsCover ? CeilingM : BottomM;
}
