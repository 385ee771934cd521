using Coilwright.Physics.Wire;

namespace Coilwright.Physics.Winding;

/// <summary>One winding as it stands on its bobbin. SI units.</summary>
public sealed record WoundCoil
{
    /// <summary>Turns wound.</summary>
    public required double Turns { get; init; }

    /// <summary>Turns in one pass from flange to flange: window ÷ pitch, or ÷ overall diameter when no pitch is stated.</summary>
    public required double TurnsPerLayer { get; init; }

    /// <summary>Passes of the guide from flange to flange; the last may be partial.</summary>
    public required double Layers { get; init; }

    /// <summary>Radial thickness of the winding, m.</summary>
    public required double BuildM { get; init; }

    /// <summary>Insulated wire section over the window's section; null when the bobbin states no radial room.</summary>
    public required double? Fill { get; init; }

    /// <summary>Insulated wire section over the section the winding takes up.</summary>
    public required double PackingFactor { get; init; }

    /// <summary>Outside length of the winding along x, m.</summary>
    public required double OuterLengthM { get; init; }

    /// <summary>Outside width of the winding along y, m.</summary>
    public required double OuterWidthM { get; init; }

    /// <summary>Wire length over turns, m.</summary>
    public required double MeanTurnM { get; init; }

    /// <summary>Wire in the coil, m, summed over its layers; leads not included.</summary>
    public required double WireLengthM { get; init; }

    /// <summary>Mass of the wire in the coil with its enamel, kg.</summary>
    public required double WireMassKg { get; init; }

    /// <summary>DC resistance at 20 °C with the stretch, Ω.</summary>
    public required double DcResistanceAt20COhm { get; init; }

    /// <summary>True when the build stays within the stated radial room; null when none is stated.</summary>
    public required bool? FitsWindow { get; init; }

    /// <summary>DC resistance at a temperature of the winding, Ω.</summary>
    /// <param name="temperatureC">Temperature, °C, −200…300.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public double DcResistanceOhm(double temperatureC) => CopperWire.CorrectFrom20C(DcResistanceAt20COhm, temperatureC);
}
