using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads "targets": wanted values by quantity name, each with a tolerance.</summary>
internal static class TargetReader
{
    private static readonly (string Name, Limits Limits)[] s_quantities =
    [
        (QuantityKey.DcResistance, Allowed.DcResistance),
        (QuantityKey.Inductance, Allowed.Inductance),
        (QuantityKey.Capacitance, Allowed.CoilCapacitance),
        (QuantityKey.UnloadedPeak, Allowed.Frequency with { Example = "9.2 kHz" }),
        (QuantityKey.LoadedPeak, Allowed.Frequency with { Example = "4 kHz" }),
    ];

    public static IReadOnlyDictionary<string, Target> Read(JsonFields fields)
    {
        fields.Free("notes");
        Dictionary<string, Target> targets = new(StringComparer.Ordinal);
        foreach ((string name, Limits limits) in s_quantities)
        {
            Target? target = fields.Object(name, inner => One(inner, limits, name));
            if (target is not null)
            {
                targets.Add(name, target);
            }
        }

        return targets;
    }

    private static Target One(JsonFields fields, Limits limits, string quantity)
    {
        fields.Free("notes");
        Entered nominal = fields.Required("nominal", limits);
        Entered tolerance = fields.Required("tolerance", Allowed.Tolerance);
        double? atHz = null;
        if (Quantity.Find(quantity) is { Beside: StandsBeside.Frequency })
        {
            atHz = fields.Optional("at", Allowed.Frequency)?.Si;
        }
        else
        {
            fields.Refuse("at", "only an inductance or capacitance is stated at a frequency");
        }

        double temperatureC = fields.Optional("temperature", Allowed.Temperature)?.Si ?? 20;
        return new Target(nominal, tolerance.Si, tolerance.Typed, atHz, temperatureC);
    }
}
