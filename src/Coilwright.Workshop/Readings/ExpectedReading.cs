namespace Coilwright.Workshop.Readings;

/// <summary>What a good coil reads at one frequency, series values without self-capacitance.</summary>
/// <param name="InductanceH">Inductance, H.</param>
/// <param name="Quality">ωL/R with the AC resistance.</param>
/// <param name="Reactance">ωL/R with the DC resistance.</param>
/// <param name="AcOverDc">AC over DC resistance, 1 or more.</param>
/// <param name="InductanceDeviation">Standard deviation of the inductance, as a part of one.</param>
/// <param name="QualityDeviation">Standard deviation of Q, as a part of one.</param>
public sealed record ExpectedReading(double InductanceH, double Quality, double Reactance, double AcOverDc, double InductanceDeviation, double QualityDeviation);
