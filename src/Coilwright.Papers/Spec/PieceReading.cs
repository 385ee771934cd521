using Coilwright.Analysis.Quantities;

namespace Coilwright.Papers.Spec;

/// <summary>One value read on a piece, with its conditions, as papers tell it.</summary>
/// <param name="Quantity">"dcResistance" Ω, "inductance" H, "q", "acResistance" Ω, "capacitance" F, "unloadedPeak" or "loadedPeak" Hz,
/// "poleField" T, or the shop's own word for a bare number.</param>
/// <param name="Si">As read, SI; a resistance at the temperature of reading. NaN with a flag for what gave no number.</param>
public sealed record PieceReading(string Quantity, double Si)
{
    /// <summary>
    /// What the value of a resistance may be off by while its temperature is unknown, a part of it; a room's ±5 °C. Common practice, no
    /// source.
    /// </summary>
    public const double UnknownTemperaturePart = 0.02;

    /// <summary>Temperature of the piece, °C; null when not written down.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>Frequency of an inductance, Q or AC resistance, Hz; null when not written down.</summary>
    public double? AtHz { get; init; }

    /// <summary>Name of the instrument, or empty.</summary>
    public string Instrument { get; init; } = "";

    /// <summary>Uncertainty (95 %), a part of the reading; null when nobody stated one.</summary>
    public double? UncertaintyPart { get; init; }

    /// <summary>Empty, or why there is no number: "open".</summary>
    public string Flag { get; init; } = "";

    /// <summary>True when there is a number to compare.</summary>
    public bool IsNumber => double.IsFinite(Si) && Flag.Length == 0;

    /// <summary>The value to compare, SI: a DC resistance at 20 °C where its temperature is known, all else as read.</summary>
    public double Comparable => Workshop.Quantities.Quantity.Comparable(Quantity, Si, TemperatureC);

    /// <summary>
    /// Half of the interval about <see cref="Comparable"/>, a part of it; null when nothing is known of it. An unknown temperature counts.
    /// </summary>
    public double? HalfPart =>
        Quantity == QuantityKey.DcResistance && TemperatureC is null
            ? Math.Sqrt(UnknownTemperaturePart * UnknownTemperaturePart + (UncertaintyPart ?? 0) * (UncertaintyPart ?? 0))
            : UncertaintyPart;
}
