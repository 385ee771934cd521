namespace Coilwright.Formats.Responses;

/// <summary>One frequency of a response.</summary>
public readonly record struct ResponseLine(double FrequencyHz, double GainDb, double PhaseDeg, double ImpedanceOhm);
