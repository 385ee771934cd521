using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Recipes;

/// <summary>Reads what hangs on a pickup (format coilwright.load/1) and tells every mistake at once.</summary>
public static class LoadReader
{
    public const string Format = "coilwright.load/1";

    /// <summary>The load, or every problem. Every part is optional.</summary>
    public static ReadOutcome<LoadCircuit> Read(string json) => JsonText.Read(json, Format, Whole);

    private static LoadCircuit Whole(JsonFields fields)
    {
        fields.Free("name", "notes", "tags");
        Part<VolumeControl>? volume = fields.Object("volume", Volume);
        Part<ToneControl>? tone = fields.Object("tone", Tone);
        Part<double>? cable = fields.Object("cable", Cable);
        Input? input = fields.Object("input", InputOf);
        return new LoadCircuit
        {
            Volume = volume?.Value,
            Tone = tone?.Value,
            CableCapacitanceF = cable?.Value ?? 0,
            InputResistanceOhm = input?.ResistanceOhm,
            InputCapacitanceF = input?.CapacitanceF ?? 0,
        };
    }

    private static Part<VolumeControl> Volume(JsonFields fields) =>
        new(new VolumeControl(fields.Required("resistance", Allowed.PotResistance).Si, Setting(fields)));

    private static Part<ToneControl> Tone(JsonFields fields) =>
        new(new ToneControl(fields.Required("resistance", Allowed.PotResistance).Si, fields.Required("capacitor", Allowed.ToneCapacitor).Si, Setting(fields)));

    private static double Setting(JsonFields fields) => fields.Number("setting", 0, 1) ?? 1;

    private static Part<double> Cable(JsonFields fields)
    {
        if (!fields.Has("length") && !fields.Has("capacitancePerLength"))
        {
            fields.Free("length", "capacitancePerLength");
            return new Part<double>(fields.Required("capacitance", Allowed.LoadCapacitance).Si);
        }

        fields.Refuse("capacitance", "give either the capacitance, or length and capacitancePerLength");
        return new Part<double>(fields.Required("length", Allowed.CableLength).Si * fields.Required("capacitancePerLength", Allowed.CablePerLength).Si);
    }

    private static Input InputOf(JsonFields fields) => new(
        fields.Optional("resistance", Allowed.LossResistance)?.Si,
        fields.Optional("capacitance", Allowed.LoadCapacitance)?.Si ?? 0);

    private sealed record Part<T>(T Value);

    private sealed record Input(double? ResistanceOhm, double CapacitanceF);
}
