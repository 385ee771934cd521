namespace Coilwright.Workshop.Readings;

/// <summary>What a good coil reads at one frequency, as a meter in series mode shows it, its own capacitance included.</summary>
/// <param name="InductanceH">Inductance, H.</param>
/// <param name="Quality">Q.</param>
/// <param name="Reactance">ωL/R with the DC resistance, of the winding without its capacitance.</param>
/// <param name="AcOverDc">AC over DC resistance, 1 or more.</param>
/// <param name="InductanceDeviation">Standard deviation of the inductance, as a part of one.</param>
/// <param name="QualityDeviation">Standard deviation of Q, as a part of one.</param>
public sealed record ExpectedReading(
    double InductanceH,
    double Quality,
    double Reactance,
    double AcOverDc,
    double InductanceDeviation,
    double QualityDeviation
)
{
    /// <summary>Where the expectation of Q comes from, in words.</summary>
    public string From { get; init; } = "expected";
}
