using Coilwright.Physics;

namespace Coilwright.Analysis.Originals;

/// <summary>Quantities that can be read on an original, by their names in the file format.</summary>
public enum OriginalQuantity
{
    DcResistance,
    Inductance,
    BareDiameter,
    OverallDiameter,
    ResistancePerLength,
    Build,
    OuterLength,
    OuterWidth,
    MeanTurnLength,
    WireLength,
    WireMass,
    Capacitance,
    UnloadedPeak,
    Turns,
}

/// <summary>One reading of an original.</summary>
/// <param name="Quantity">What was read.</param>
/// <param name="Value">SI value, a resistance at 20 °C.</param>
/// <param name="Relative">Half-width of its 95 % interval over the value, above 0.</param>
/// <param name="AtHz">Frequency of an inductance reading, Hz.</param>
public sealed record OriginalReading(OriginalQuantity Quantity, double Value, double Relative, double AtHz = 1000);

/// <summary>One thing that an original may be made of.</summary>
/// <param name="Gauge">For example "AWG 42".</param>
/// <param name="Build">Film build, "single" and so on.</param>
/// <param name="PoleMaterial">Material of the poles where it is not known; empty where it is.</param>
/// <param name="Model">The pickup with that wire and those poles; its turns are where the search begins.</param>
/// <param name="Weight">How common it is against the others, before any reading.</param>
public sealed record OriginalCandidate(string Gauge, string Build, string PoleMaterial, PickupModel Model, double Weight);
