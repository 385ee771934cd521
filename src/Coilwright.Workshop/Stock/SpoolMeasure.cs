using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Stock;

/// <summary>What a measured length of a spool says of its wire. SI units, at 20 °C.</summary>
/// <param name="OhmPerM">Resistance per metre with its 95 % interval.</param>
/// <param name="BareDiameterM">Bare diameter that has this resistance, with its 95 % interval.</param>
/// <param name="OverNominal">Resistance per metre over the table's nominal, less one.</param>
public sealed record SpoolMeasure(Estimate OhmPerM, Estimate BareDiameterM, double OverNominal)
{
    /// <summary>
    /// 95 % doubt of a length laid along a tape, as a part of it, and its ends, m. Common practice, no source [WinderPractice].
    /// </summary>
    public const double TapeFraction = 0.001,
        EndsM = 0.003;

    /// <summary>95 % doubt of a bench meter. Common practice, no source.</summary>
    public const double MeterFraction = 0.002;

    /// <summary>
    /// 95 % doubt of the wire's temperature when a thermometer hangs beside it, °C, and as a part of the resistance when nothing is known.
    /// Common practice, no source.
    /// </summary>
    public const double ThermometerC = 1,
        UnknownTemperatureFraction = 0.02;

    /// <summary>
    /// Winding copper conducts 100 to 102 % of the standard (read in a summary of [IEC60028]): better copper hides a thinner wire.
    /// </summary>
    private const double BestCopper = 1.02;

    /// <summary>What the last measured length of a spool says; null when none was measured.</summary>
    /// <param name="size">The size on the label.</param>
    /// <param name="readings">Readings of the spool in order of entry.</param>
    public static SpoolMeasure? Of(WireSize size, IEnumerable<SpoolReadingRecord> readings) =>
        readings.LastOrDefault(reading => reading.Kind == SpoolReadingKind.Measured) is { LengthM: { } lengthM, Ohm: { } ohm } measured
            ? For(size, lengthM, ohm, measured.TemperatureC)
            : null;

    /// <summary>Works a measurement out.</summary>
    /// <param name="size">The size on the label.</param>
    /// <param name="lengthM">Length measured, m.</param>
    /// <param name="ohm">Its resistance, Ω.</param>
    /// <param name="temperatureC">Its temperature, °C; null when not known.</param>
    public static SpoolMeasure For(WireSize size, double lengthM, double ohm, double? temperatureC)
    {
        double ohmPerM = Quantity.DcResistance.Comparable(ohm, temperatureC) / lengthM;
        double warmth = temperatureC is null ? UnknownTemperatureFraction : CopperWire.TemperatureCoefficientAt20C * ThermometerC;
        double doubt = Math.Sqrt(Square(TapeFraction) + Square(EndsM / lengthM) + Square(MeterFraction) + Square(warmth));
        double bareM = Math.Sqrt(4 / (Math.PI * size.ConductivitySPerM * ohmPerM));

        // Better copper than the table's has the same resistance at a smaller section: only the lower end moves.
        double best = 1 - Math.Sqrt(size.ConductivitySPerM / (CopperWire.StandardConductivitySPerM * BestCopper));
        Estimate bare = new(bareM, bareM * (1 - Math.Sqrt(Square(doubt / 2) + Square(best))), bareM * (1 + doubt / 2), Basis.Measured);
        return new SpoolMeasure(Estimate.Within(ohmPerM, doubt, Basis.Measured), bare, ohmPerM / size.NominalOhmPerM - 1);
    }

    private static double Square(double value) => value * value;
}
