using Coilwright.Physics;

namespace Coilwright.Analysis.Originals;

/// <summary>Quantities that can be read on an original, by their names in the file format.</summary>
public enum OriginalQuantity
{
    /// <summary>DC resistance at 20 °C, Ω.</summary>
    DcResistance,

    /// <summary>Series inductance at the reading's frequency, H.</summary>
    Inductance,

    /// <summary>Diameter without enamel, m.</summary>
    BareDiameter,

    /// <summary>Diameter over the enamel, m.</summary>
    OverallDiameter,

    /// <summary>Resistance of a metre of the wire at 20 °C, Ω/m.</summary>
    ResistancePerLength,

    /// <summary>Radial thickness of the winding, m.</summary>
    Build,

    /// <summary>Outside length of the winding along x, m.</summary>
    OuterLength,

    /// <summary>Outside width of the winding along y, m.</summary>
    OuterWidth,

    /// <summary>Length of the mean turn, m.</summary>
    MeanTurnLength,

    /// <summary>Length of the wire in the coil, m.</summary>
    WireLength,

    /// <summary>Mass of the wire in the coil with its enamel, kg.</summary>
    WireMass,

    /// <summary>Self-capacitance, F.</summary>
    Capacitance,

    /// <summary>Peak of the response without a load, Hz.</summary>
    UnloadedPeak,

    /// <summary>Turns counted when unwinding.</summary>
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
