namespace Coilwright.Physics.Electrostatics;

/// <summary>How the leads of a pickup are made.</summary>
public enum LeadConstruction
{
    /// <summary>One conductor in a braid that is the other wire.</summary>
    SingleBraided,

    /// <summary>Two conductors in a grounded screen.</summary>
    TwoConductorScreened,

    /// <summary>Four conductors in a grounded screen: both ends of two coils.</summary>
    FourConductorScreened,

    /// <summary>Two wires beside each other, without a screen.</summary>
    UnscreenedPair,
}

/// <summary>Leads as a recipe names them; what is null takes the usual figure of the construction.</summary>
public sealed record LeadModel
{
    /// <summary>How they are made.</summary>
    public required LeadConstruction Construction { get; init; }

    /// <summary>Length, m; null takes the usual one.</summary>
    public double? LengthM { get; init; }

    /// <summary>Capacitance from each conductor to the screen, F/m.</summary>
    public double? ToScreenFPerM { get; init; }

    /// <summary>Capacitance between two conductors beside each other, F/m.</summary>
    public double? BetweenFPerM { get; init; }
}
