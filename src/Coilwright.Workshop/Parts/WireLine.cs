namespace Coilwright.Workshop.Parts;

/// <summary>A wire of a pickup, over all coils wound with it.</summary>
/// <param name="Name">Gauge, insulation and film.</param>
/// <param name="Coils">Names of the coils.</param>
/// <param name="LengthM">Length in one piece, m.</param>
/// <param name="MassKg">Mass in one piece, kg.</param>
/// <param name="Part">95 % doubt of both, a part of them: the coils' added up as if they erred alike.</param>
public sealed record WireLine(string Name, IReadOnlyList<string> Coils, double LengthM, double MassKg, double Part);
