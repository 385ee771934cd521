namespace Coilwright.Physics.Wire;

/// <summary>Limits of a diameter, m.</summary>
/// <param name="MinM">Smallest that the standard allows.</param>
/// <param name="NominalM">Nominal, or the middle where the standard gives limits only.</param>
/// <param name="MaxM">Largest that the standard allows.</param>
public readonly record struct DiameterLimits(double MinM, double NominalM, double MaxM)
{
    /// <summary>The nominal with the limits as its 95 % interval.</summary>
    public Estimate ToEstimate() => new(NominalM, MinM, MaxM, Basis.Assumed);
}

/// <summary>One row of the wire tables. SI units.</summary>
public sealed record WireSize
{
    /// <summary>Canonical name: "AWG 42", "AWG 42.5", "0.063 mm".</summary>
    public required string Gauge { get; init; }

    /// <summary>True for sizes in millimetres with grades, false for AWG with builds.</summary>
    public required bool IsMetric { get; init; }

    /// <summary>AWG number, or nominal bare diameter in mm.</summary>
    public required double Number { get; init; }

    /// <summary>Diameter of the copper.</summary>
    public required DiameterLimits Bare { get; init; }

    /// <summary>
    /// Diameter over the enamel by build ("single", "heavy", "triple", "quad") or grade ("grade-1"…"grade-3"); only those that are made.
    /// </summary>
    public required IReadOnlyDictionary<string, DiameterLimits> Builds { get; init; }

    /// <summary>Short key of where the row was read; docs and the table's head name it.</summary>
    public required string Source { get; init; }

    /// <summary>
    /// What is odd about the row: a limit taken from another table, an assumed tolerance, a probable misprint; empty as a rule.
    /// </summary>
    public string Note { get; init; } = "";

    /// <summary>Conductivity that the standard's nominal resistances stand for, S/m.</summary>
    public double ConductivitySPerM => IsMetric ? CopperWire.MetricConductivitySPerM : CopperWire.StandardConductivitySPerM;

    /// <summary>Resistance per metre at 20 °C of the nominal diameter, Ω/m, as the standard prints it.</summary>
    public double NominalOhmPerM => CopperWire.OhmPerM(Bare.NominalM, 20, ConductivitySPerM);
}
