using System.Globalization;
using Coilwright.Analysis.Originals;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Originals;

/// <summary>Reads one entry of "readings".</summary>
public static class ReadingReader
{
    /// <summary>Frequency of an inductance whose own was not understood.</summary>
    private const double UsualHz = 1000;

    /// <summary>Name, limits, and the 95 % interval taken when none is told (common practice, no source).</summary>
    private static readonly Dictionary<string, (OriginalQuantity Quantity, Limits Limits, double Usual)> s_kinds = new(
        StringComparer.Ordinal
    )
    {
        [QuantityKey.DcResistance] = (OriginalQuantity.DcResistance, Allowed.DcResistance with { Example = "5.76 kΩ" }, 0.01),
        [QuantityKey.Inductance] = (OriginalQuantity.Inductance, Allowed.Inductance with { Example = "2.2 H" }, 0.02),
        [QuantityKey.BareDiameter] = (OriginalQuantity.BareDiameter, Allowed.BareDiameter, 0.02),
        [QuantityKey.OverallDiameter] = (OriginalQuantity.OverallDiameter, Allowed.OverallDiameter with { Example = "2.8 thou" }, 0.02),
        [QuantityKey.ResistancePerLength] = (OriginalQuantity.ResistancePerLength, Allowed.OhmPerM, 0.01),
        [QuantityKey.Build] = (OriginalQuantity.Build, Allowed.MaxBuild with { Example = "4.1 mm" }, 0.03),
        [QuantityKey.OuterLength] = (OriginalQuantity.OuterLength, Allowed.CoreLength with { Example = "71 mm" }, 0.005),
        [QuantityKey.OuterWidth] = (OriginalQuantity.OuterWidth, Allowed.CoreLength with { Example = "14 mm" }, 0.01),
        [QuantityKey.MeanTurnLength] = (OriginalQuantity.MeanTurnLength, Allowed.CoreLength with { Max = 1, Example = "130 mm" }, 0.01),
        [QuantityKey.WireLength] = (OriginalQuantity.WireLength, Quantity.WireLength.Within(1, 1e5, "1136 m"), 0.01),
        [QuantityKey.WireMass] = (OriginalQuantity.WireMass, Quantity.WireMass.Within(1e-4, 10, "34 g"), 0.01),
        [QuantityKey.Capacitance] = (OriginalQuantity.Capacitance, Allowed.CoilCapacitance, 0.05),
        [QuantityKey.UnloadedPeak] = (OriginalQuantity.UnloadedPeak, Allowed.Frequency with { Example = "9.2 kHz" }, 0.02),
        [QuantityKey.Turns] = (OriginalQuantity.Turns, Quantity.Turns.Within(1, 100_000, "8000"), 0.005),
    };

    public static OriginalReading? Read(JsonFields fields)
    {
        fields.Free("notes", "instrument");
        string? name = fields.Word("quantity", s_kinds.Keys, required: true);
        if (name is null)
        {
            fields.Free("value", "uncertainty", "temperature", "at");
            return null;
        }

        (OriginalQuantity quantity, Limits limits, double usual) = s_kinds[name];
        double value =
            quantity == OriginalQuantity.Turns
                ? fields.Number("value", 1, 100_000, required: true) ?? double.NaN
                : fields.Required("value", limits).Si;
        double relative = fields.Has("uncertainty") ? Uncertainty(fields, limits.Kind, value) : usual;
        if (quantity == OriginalQuantity.DcResistance)
        {
            double temperatureC = fields.Optional("temperature", Allowed.Temperature)?.Si ?? double.NaN;
            if (!fields.Has("temperature"))
            {
                relative = Math.Sqrt(relative * relative + 0.02 * 0.02); // 5 °C either way
            }

            value = Quantity.DcResistance.Comparable(value, double.IsNaN(temperatureC) ? null : temperatureC);
        }
        else
        {
            fields.Free("temperature");
        }

        double hz = UsualHz;
        if (
            quantity == OriginalQuantity.Inductance
            && fields.Required("at", Allowed.Frequency with { Min = 10, Max = 20_000, Example = "120 Hz" }) is { IsKnown: true } at
        )
        {
            hz = at.Si;
        }

        return double.IsFinite(value) && double.IsFinite(relative) ? new OriginalReading(quantity, value, relative, hz) : null;
    }

    /// <summary>Half of the 95 % interval as a part of the value; told as a fraction or in the value's unit.</summary>
    private static double Uncertainty(JsonFields fields, QuantityKind kind, double value)
    {
        string typed = fields.Text("uncertainty", "0.5 %");
        double relative = double.NaN;
        const string allowed = "a part as \"0.5 %\", or in the unit of the value";
        if (fields.RefusesComma(fields.PathOf("uncertainty"), typed, comma => [comma.Replace(',', '.')], allowed))
        {
            return relative;
        }

        if (QuantityParser.TryParse(typed, QuantityKind.Fraction, unitRequired: true, out Entered part, out _))
        {
            relative = part.Si;
        }
        else if (QuantityParser.TryParse(typed, kind, unitRequired: kind != QuantityKind.Turns, out Entered absolute, out string why))
        {
            relative = absolute.Si / value;
        }
        else
        {
            fields.Problems.Add(fields.PathOf("uncertainty"), why, $"\"{typed}\"", allowed);
            return double.NaN;
        }

        if (double.IsFinite(value) && relative is not (>= 1e-5 and <= 0.5))
        {
            fields.Problems.Add(
                fields.PathOf("uncertainty"),
                "outside what is possible here",
                relative.ToString("P3", CultureInfo.InvariantCulture),
                "0.001 % to 50 % of the value"
            );
            return double.NaN;
        }

        return relative;
    }
}
