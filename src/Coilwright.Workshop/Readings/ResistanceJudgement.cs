using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>One resistance reading beside its limits, at 20 °C.</summary>
/// <param name="Finding">What it means.</param>
/// <param name="OhmAt20C">What was compared; null when there is no usable value.</param>
/// <param name="IsOpen">The meter found no connection.</param>
/// <param name="TemperatureKnown">Somebody wrote a temperature down.</param>
/// <param name="IsRiddle">The reading itself is in doubt, so that it tells nothing about the coil.</param>
internal sealed record ResistanceJudgement(Finding Finding, Estimate? OhmAt20C, bool IsOpen, bool TemperatureKnown, bool IsRiddle)
{
    /// <summary>Doubt of a resistance whose temperature nobody wrote down, as a part of one: 5 °C either way of copper.</summary>
    private const double UnknownTemperature = 0.02;

    /// <summary>How well a stated temperature is taken to be the coil's, °C (95 %). Our assumption, no source.</summary>
    private const double TemperatureDoubtC = 1;

    private static readonly Finding s_wordless = new(VerdictKind.Pass, "");

    /// <summary>Compares a reading with its limits.</summary>
    /// <param name="band">The limits.</param>
    /// <param name="reading">The reading.</param>
    /// <param name="meterPart">The meter's uncertainty, a part of the reading (95 %).</param>
    /// <param name="inWords">False leaves the comparison out, for a coil that only others are judged by.</param>
    public static ResistanceJudgement Of(Band band, ReadingRecord reading, double meterPart = 0, bool inWords = true)
    {
        string flag = reading.Si is { } si ? PossibleReading.FlagOf(QuantityKey.DcResistance, si) : reading.Flag;
        if (flag == PossibleReading.Open || reading.Flag == PossibleReading.Open)
        {
            return new ResistanceJudgement(
                new Finding(VerdictKind.Reject, "open: the meter finds no connection"),
                null,
                IsOpen: true,
                TemperatureKnown: true,
                IsRiddle: false
            );
        }

        if (flag.Length > 0 || reading.Si is not { } ohm)
        {
            return Riddle($"\"{reading.Typed}\" is kept: {(flag.Length > 0 ? flag : "not understood")}");
        }

        if (LooksLikeKiloOhms(band, reading, ohm))
        {
            return Riddle($"\"{reading.Typed}\" was read as ohms; if kilo-ohms were meant, correct it to {reading.Typed.Trim()}k");
        }

        Estimate at20C = At20C(ohm, reading.TemperatureC);
        return new ResistanceJudgement(
            inWords ? Compare(band, at20C, reading.TemperatureC, meterPart) : s_wordless,
            at20C,
            IsOpen: false,
            reading.TemperatureC is not null,
            IsRiddle: false
        );
    }

    private static ResistanceJudgement Riddle(string reason) =>
        new(new Finding(VerdictKind.Hold, reason), null, IsOpen: false, TemperatureKnown: false, IsRiddle: true);

    private static Estimate At20C(double ohm, double? temperatureC) =>
        temperatureC is { } celsius
            ? Estimate.Within(
                Quantity.DcResistance.Comparable(ohm, celsius),
                CopperWire.TemperatureCoefficientAt20C * TemperatureDoubtC / CopperWire.TemperatureFactor(celsius),
                Basis.Measured
            )
            : Estimate.Within(ohm, UnknownTemperature, Basis.Measured);

    /// <summary>A bare number a thousand times too small is a slip of the hand, not a coil.</summary>
    private static bool LooksLikeKiloOhms(Band band, ReadingRecord reading, double ohm) =>
        reading.Unit == "Ω"
        && !reading.Typed.Any(char.IsLetter)
        && ohm * 1000 > band.Nominal / 3
        && ohm * 1000 < band.Nominal * 3
        && band.Nominal > 500;

    private static Finding Compare(Band band, Estimate at20C, double? temperatureC, double meterPart)
    {
        double degree = temperatureC is null ? 0 : at20C.High / at20C.Value - 1,
            part = Math.Sqrt(meterPart * meterPart + degree * degree),
            guard = part * at20C.Value,
            low = (temperatureC is null ? at20C.Low : at20C.Value) - guard,
            high = (temperatureC is null ? at20C.High : at20C.Value) + guard;
        string said = Written(at20C.Value) + (temperatureC is null ? ", temperature not recorded, so ±2 %," : " at 20 °C,"),
            limits = $"{Written(band.Low)} to {Written(band.High)}";
        string off = Off(at20C.Value / band.Nominal - 1, band.IsTarget ? "target" : "forecast");
        string about = temperatureC is null ? "of the meter" : "of the meter and ±1 °C";
        string guarded = FormattableString.Invariant($" (allowance {about} ±{part * 100:0.##} %)");
        if (low >= band.Low && high <= band.High)
        {
            return new Finding(VerdictKind.Pass, $"{said} {off}, inside {limits}{guarded}");
        }

        if (high < band.Low || low > band.High)
        {
            return new Finding(VerdictKind.Reject, $"{said} {off}, outside {limits}{guarded}");
        }

        string who = temperatureC is null ? "a coil whose temperature is not known" : "this meter and ±1 °C";
        return new Finding(VerdictKind.Hold, $"{said} {off}; too close to the limit of {limits} for {who} to decide{guarded}");
    }

    private static string Off(double part, string wanted)
    {
        string side = part > 0 ? "above" : "below";
        return Math.Abs(part) < 0.0005 ? $"on {wanted}" : FormattableString.Invariant($"{Math.Abs(part) * 100:0.0} % {side} {wanted}");
    }

    private static string Written(double ohm) => QuantityParser.Format(ohm, QuantityKind.Resistance, 4);
}
