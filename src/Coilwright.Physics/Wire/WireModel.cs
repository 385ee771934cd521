namespace Coilwright.Physics.Wire;

/// <summary>The wire of one coil: table values, or what was measured on the spool. SI units.</summary>
public sealed record WireModel
{
    /// <summary>How the shop calls it: "AWG 42" or "0.063 mm".</summary>
    public required string Gauge { get; init; }

    /// <summary>Enamel chemistry, a key of the insulation table, for example "plain-enamel".</summary>
    public required string Insulation { get; init; }

    /// <summary>Diameter without enamel, m, with the standard's limits or the measured interval.</summary>
    public required Estimate BareDiameterM { get; init; }

    /// <summary>Diameter over the enamel, m.</summary>
    public required Estimate OverallDiameterM { get; init; }

    /// <summary>Resistance per metre at 20 °C if it was measured on the spool, Ω/m; otherwise it follows from the bare diameter.</summary>
    public Estimate? MeasuredOhmPerM { get; init; }

    /// <summary>Conductivity of the copper at 20 °C, S/m: that of the table the gauge stands in.</summary>
    public double ConductivitySPerM { get; init; } = CopperWire.StandardConductivitySPerM;

    /// <summary>Resistance per metre at 20 °C, Ω/m: as measured, or of the middle of its bare diameter.</summary>
    public double OhmPerMAt20C => MeasuredOhmPerM?.Value ?? CopperWire.OhmPerM(BareDiameterM.Value, 20, ConductivitySPerM);

    /// <summary>Relative permittivity of the enamel.</summary>
    public required Estimate EnamelPermittivity { get; init; }
}
