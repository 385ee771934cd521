using System.Text.Json;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Recipes.Circuits;

/// <summary>Volume, tone, buffer, cable and input, as they stand in a load and in a circuit.</summary>
public static class ControlFields
{
    private static readonly string[] s_tapers = ["linear", "logarithmic"],
        s_joined = ["parallel", "series"],
        s_wirings = ["usual", "from-wiper"];

    /// <summary>The parts of a load; every one is optional.</summary>
    public static LoadCircuit Load(JsonFields fields)
    {
        Part<VolumeControl>? volume = fields.Object("volume", Volume);
        Part<ToneControl>? tone = fields.Object("tone", Tone);
        Part<BufferStage>? buffer = fields.Object("buffer", Buffer);
        Part<double>? cable = fields.Object("cable", Cable);
        Input? input = fields.Object("input", InputOf);
        return new LoadCircuit
        {
            Volume = volume?.Value,
            Tone = tone?.Value,
            Buffer = buffer?.Value,
            CableCapacitanceF = cable?.Value ?? 0,
            InputResistanceOhm = input?.ResistanceOhm,
            InputCapacitanceF = input?.CapacitanceF ?? 0,
        };
    }

    public static Part<VolumeControl> Volume(JsonFields fields) =>
        new(
            new VolumeControl(fields.Required("resistance", Allowed.PotResistance).Si, Setting(fields))
            {
                FromWiper = fields.Word("wiring", s_wirings) == "from-wiper",
                Retainer = fields.Object("trebleRetaining", Retainer)?.Value,
            }
        );

    public static Part<ToneControl> Tone(JsonFields fields) =>
        new(
            new ToneControl(
                fields.Required("resistance", Allowed.PotResistance).Si,
                fields.Required("capacitor", Allowed.ToneCapacitor).Si,
                Setting(fields)
            )
        );

    /// <summary>Share of the track below the wiper: the setting through its taper.</summary>
    private static double Setting(JsonFields fields)
    {
        double setting = fields.Number("setting", 0, 1) ?? 1;
        Taper? taper = TaperOf(fields);
        return taper is null || double.IsNaN(setting) ? setting : taper.Share(setting);
    }

    private static Taper? TaperOf(JsonFields fields)
    {
        if (fields.IsList("taper"))
        {
            fields.Refuse("middle", "a measured taper needs no middle");
            return Measured(fields);
        }

        string? word = fields.Word("taper", s_tapers);
        if (word != "logarithmic")
        {
            fields.Refuse("middle", "only a logarithmic taper has a middle");
            return null;
        }

        double middle = fields.Number("middle", 0.01, 0.49) ?? Taper.UsualMiddle;
        return double.IsNaN(middle) ? null : Taper.Logarithmic(middle);
    }

    private static Taper? Measured(JsonFields fields)
    {
        const string Example = "[ [0, 0], [0.5, 0.12], [1, 1] ]";
        Boxed[] pairs = [.. fields.Items("taper", PairOf, 200)];
        string path = fields.PathOf("taper");
        if (Array.Exists(pairs, pair => pair is null))
        {
            fields.Problems.Add(path, "each entry is a pair of numbers, the setting and the share of the track", null, Example);
            return null;
        }

        for (int i = 1; i < pairs.Length; i++)
        {
            if (pairs[i].Setting <= pairs[i - 1].Setting || pairs[i].Share < pairs[i - 1].Share)
            {
                fields.Problems.Add(
                    FormattableString.Invariant($"{path}[{i}]"),
                    "settings must rise and shares must not fall",
                    FormattableString.Invariant($"[{pairs[i].Setting}, {pairs[i].Share}]"),
                    Example
                );
                return null;
            }
        }

        bool whole =
            pairs.Length >= 2
            && pairs[0].Setting <= 0
            && pairs[^1].Setting >= 1
            && pairs[^1].Setting <= 1
            && pairs[0].Share >= 0
            && pairs[^1].Share <= 1;
        if (!whole)
        {
            fields.Problems.Add(path, "a measured taper runs from setting 0 to setting 1, with shares from 0 to 1", null, Example);
            return null;
        }

        return Taper.Measured([.. pairs.Select(pair => (pair.Setting, pair.Share))]);
    }

    private static Boxed? PairOf(JsonElement item, string path) =>
        item.ValueKind == JsonValueKind.Array
        && item.GetArrayLength() == 2
        && item.EnumerateArray().All(number => number.ValueKind == JsonValueKind.Number)
        && item[0].TryGetDouble(out double setting)
        && item[1].TryGetDouble(out double share)
            ? new Boxed(setting, share)
            : null;

    private static Part<TrebleRetainer> Retainer(JsonFields fields)
    {
        double? ohm = fields.Optional("resistance", Allowed.PotResistance)?.Si,
            farad = fields.Optional("capacitance", Allowed.RetainerCapacitor)?.Si;
        string? joined = fields.Word("joined", s_joined);
        if (ohm is null && farad is null)
        {
            fields.Problems.Add(fields.PathOf("capacitance"), "a treble-retaining network needs a capacitance, a resistance, or both");
        }
        else if (joined is null && ohm is not null && farad is not null)
        {
            fields.Problems.Add(
                fields.PathOf("joined"),
                "with a resistance and a capacitance, say how they are joined",
                null,
                string.Join(", ", s_joined)
            );
        }

        return new Part<TrebleRetainer>(new TrebleRetainer(ohm, farad, joined == "series"));
    }

    private static Part<BufferStage> Buffer(JsonFields fields) =>
        new(
            new BufferStage(
                fields.Optional("inputResistance", Allowed.LossResistance)?.Si ?? 1e6,
                fields.Optional("inputCapacitance", Allowed.LoadCapacitance)?.Si ?? 0,
                fields.Optional("outputResistance", Allowed.OutputResistance)?.Si ?? 1e3,
                fields.Number("gain", 0.01, 100) ?? 1
            )
        );

    private static Part<double> Cable(JsonFields fields)
    {
        if (!fields.Has("length") && !fields.Has("capacitancePerLength"))
        {
            fields.Free("length", "capacitancePerLength");
            return new Part<double>(fields.Required("capacitance", Allowed.LoadCapacitance).Si);
        }

        fields.Refuse("capacitance", "give either the capacitance, or length and capacitancePerLength");
        return new Part<double>(
            fields.Required("length", Allowed.CableLength).Si * fields.Required("capacitancePerLength", Allowed.CablePerLength).Si
        );
    }

    private static Input InputOf(JsonFields fields) =>
        new(fields.Optional("resistance", Allowed.LossResistance)?.Si, fields.Optional("capacitance", Allowed.LoadCapacitance)?.Si ?? 0);

    public sealed record Part<T>(T Value);

    private sealed record Input(double? ResistanceOhm, double CapacitanceF);

    private sealed record Boxed(double Setting, double Share);
}
