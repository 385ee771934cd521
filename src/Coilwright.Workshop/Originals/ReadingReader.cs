using Coilwright.Analysis.Originals;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Originals;

/// <summary>Reads one entry of an original's "readings".</summary>
internal static class ReadingReader
{
    /// <summary>A resistance read at an unknown temperature is known to ±2 %: ±5 °C about 20 °C.</summary>
    private const double UnknownTemperature = 0.02;

    private static readonly Limits s_overall = Allowed.OverallDiameter with { Example = "2.8 thou" };

    /// <summary>What can be read, its limits, and the 95 % uncertainty taken when none is told: common practice, no source.</summary>
    private static readonly Dictionary<string, (Limits Limits, double Part, double Absolute)> s_known = new(StringComparer.Ordinal)
    {
        ["dcResistance"] = (Allowed.DcResistance, 0.005, 0),
        ["inductance"] = (Allowed.Inductance, 0.02, 0),
        ["capacitance"] = (Allowed.CoilCapacitance, 0.1, 0),
        ["overallDiameter"] = (s_overall, 0, 1.27e-6),
        ["bareDiameter"] = (Allowed.BareDiameter, 0, 1e-6),
        ["build"] = (Allowed.MaxBuild, 0, 0.1e-3),
        ["meanTurnLength"] = (new Limits(QuantityKind.Length, 5e-3, 1, "mm", "130 mm"), 0.02, 0),
        ["outerLength"] = (Allowed.PartSize, 0, 0.2e-3),
        ["outerWidth"] = (Allowed.PartSize, 0, 0.2e-3),
        ["wireMass"] = (new Limits(QuantityKind.Mass, 1e-4, 1, "g", "30 g"), 0.01, 0),
        ["resistancePerLength"] = (Allowed.OhmPerM, 0.01, 0),
        ["turns"] = (new Limits(QuantityKind.Turns, 10, 100_000, "turns", "8000 turns"), 0.005, 0),
    };

    public static OriginalReading Read(JsonFields fields)
    {
        fields.Free("notes", "instrument", "when", "who");
        string quantity = fields.Word("quantity", s_known.Keys, required: true) ?? "dcResistance";
        (Limits limits, double part, double absolute) = s_known[quantity];
        double value = fields.Required("value", limits).Si;
        double half = Uncertainty(fields, limits, value, part, absolute);
        double atHz = 1000;
        if (quantity == "inductance")
        {
            atHz = fields.Optional("at", Allowed.Frequency with { Min = 10, Max = 20_000, Example = "120 Hz" })?.Si ?? 1000;
        }
        else
        {
            fields.Refuse("at", "only an inductance is read at a frequency");
        }

        double? temperatureC = fields.Optional("temperature", Allowed.Temperature)?.Si;
        if (quantity is "dcResistance" or "resistancePerLength")
        {
            half = temperatureC is null ? Math.Sqrt(half * half + UnknownTemperature * UnknownTemperature * value * value) : half;
            double factor = temperatureC is { } known && double.IsFinite(known) ? CopperWire.TemperatureFactor(known) : 1;
            (value, half) = (value / factor, half / factor);
        }

        return new OriginalReading(quantity, value, half, atHz);
    }

    private static double Uncertainty(JsonFields fields, Limits limits, double value, double part, double absolute)
    {
        if (fields.Own("uncertainty") is not { } given)
        {
            return part * value + absolute;
        }

        string text = given.ValueKind == System.Text.Json.JsonValueKind.String ? given.GetString()!.TrimStart('±', ' ') : "";
        double half = QuantityText.TryParse(text, QuantityKind.Fraction, unitRequired: true, out Entered share, out _) ? share.Si * value
            : QuantityText.TryParse(text, limits.Kind, unitRequired: true, out Entered width, out _) ? width.Si : double.NaN;
        if (!(half > 0 && half < value) && !double.IsNaN(value))
        {
            fields.Problems.Add(fields.PathOf("uncertainty"), "how far the reading may be off (95 %) is needed, as a part or a quantity, for example \"0.5 %\"", JsonFields.Told(given), "above 0 and less than the value");
        }

        return Math.Max(half, 1e-9 * value);
    }
}
