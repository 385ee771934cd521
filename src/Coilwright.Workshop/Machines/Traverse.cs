namespace Coilwright.Workshop.Machines;

/// <summary>What moves the guide along the bobbin. SI units.</summary>
public abstract record Traverse
{
    private Traverse() { }

    /// <summary>A screw driven by the spindle through change gears.</summary>
    /// <param name="ScrewLeadM">Travel per turn of the screw, m.</param>
    /// <param name="Wheels">Teeth of the change wheels at hand; a number listed twice is there twice.</param>
    /// <param name="Stages">1 for one pair, 2 for two pairs behind each other.</param>
    public sealed record Gears(double ScrewLeadM, IReadOnlyList<int> Wheels, int Stages) : Traverse;

    /// <summary>A stepper that makes so many whole steps a spindle turn.</summary>
    /// <param name="TravelPerStepM">Travel of one step, m.</param>
    public sealed record Steps(double TravelPerStepM) : Traverse;

    /// <summary>Cams that move the guide over and back.</summary>
    public sealed record Cams(IReadOnlyList<GuideCam> All) : Traverse;
}

/// <summary>One cam.</summary>
/// <param name="Name">As the shop calls it.</param>
/// <param name="StrokeM">Travel from one end to the other, m.</param>
/// <param name="TurnsPerStroke">Spindle turns in one stroke.</param>
/// <param name="Harmonic">True for an eccentric, whose guide slows at the ends; false for a cam of even travel.</param>
public sealed record GuideCam(string Name, double StrokeM, double TurnsPerStroke, bool Harmonic)
{
    /// <summary>Mean travel per turn, m.</summary>
    public double PitchM => StrokeM / TurnsPerStroke;
}
