using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Machines;

/// <summary>Reads a winder (format coilwright.machine/1) and tells every mistake at once.</summary>
public static class MachineReader
{
    public const string Format = "coilwright.machine/1";

    private static readonly Dictionary<string, MachineKind> s_kinds = new(StringComparer.Ordinal)
    {
        ["hand-guided"] = MachineKind.HandGuided,
        ["cam"] = MachineKind.Cam,
        ["gear"] = MachineKind.Gear,
        ["stepper"] = MachineKind.Stepper,
        ["timed"] = MachineKind.Timed,
    };

    internal static readonly Limits Travel = new(QuantityKind.Length, 1e-7, 1e-3, "mm", "0.0025 mm");
    internal static readonly Limits Lead = new(QuantityKind.Length, 1e-4, 0.02, "mm", "1 mm");
    internal static readonly Limits Stroke = new(QuantityKind.Length, 0.5e-3, 0.1, "mm", "11 mm");
    internal static readonly Limits Spread = new(QuantityKind.Fraction, 0.001, 0.5, "%", "8 %");
    internal static readonly Limits Stop = new(QuantityKind.Duration, 0, 60, "s", "1 s");

    /// <summary>The machine, or every problem.</summary>
    public static ReadOutcome<Machine> Read(string json) => JsonDocumentReader.Read(json, Format, Whole);

    /// <summary>As <see cref="Read"/>, of a file that was handed in: the point alone is decimal there.</summary>
    public static ReadOutcome<Machine> ReadFile(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    /// <summary>The word of a kind in files.</summary>
    public static string WordOf(MachineKind kind) => s_kinds.First(pair => pair.Value == kind).Key;

    private static Machine Whole(JsonFields fields)
    {
        fields.Free("notes", "tags");
        string name = fields.Text("name", "Winder 2");
        MachineKind kind = fields.Word("kind", s_kinds.Keys, required: true) is { } word ? s_kinds[word] : MachineKind.HandGuided;
        Counted? counter = fields.Object("counter", Counter);
        Traverse? traverse = fields.Object("traverse", fields => new TraverseReader(fields, Travel, Lead).Read())?.Value;
        TimedRun? timed = fields.Object("timed", Timed);
        if (kind == MachineKind.Timed)
        {
            Refuse(fields, counter is not null, "counter", "a timed machine has no counter; give \"timed\", or another kind");
            timed ??= new TimedRun(ClockStop.UsualSpeedSpread, false, ClockStop.UsualStopS);
        }
        else
        {
            Refuse(fields, timed is not null, "timed", "only a machine of kind \"timed\" is run by the clock");
            CheckTraverse(fields, kind, traverse);
        }

        return new Machine
        {
            Name = name,
            Kind = kind,
            Counter = counter?.Test,
            Traverse = traverse,
            Speed = fields.Object("speed", Speed),
            Spindles = fields.Number("spindles", 1, 50, whole: true) is { } spindles && double.IsFinite(spindles) ? (int)spindles : 1,
            TensionN = fields.Object("tension", Tension) is { } tension ? (tension.LowN, tension.HighN) : null,
            OwnTensionN = OwnTensions(fields),
            FacesYou = fields.Word("facesYou", ["top", "bottom"]) == "bottom" ? MountedSide.Bottom : MountedSide.Top,
            Timed = timed,
        };
    }

    private static void CheckTraverse(JsonFields fields, MachineKind kind, Traverse? traverse)
    {
        (bool fits, string needed) = kind switch
        {
            MachineKind.Gear => (traverse is Traverse.Gears, "\"screwLead\" and \"wheels\""),
            MachineKind.Stepper => (traverse is Traverse.Steps, "\"travelPerStep\""),
            MachineKind.Cam => (traverse is Traverse.Cams, "\"cams\""),
            _ => (traverse is null, "no traverse: a hand guides the wire"),
        };
        Refuse(fields, !fits, "traverse", $"a machine of kind \"{WordOf(kind)}\" needs {needed}");
    }

    private static void Refuse(JsonFields fields, bool wrong, string name, string because)
    {
        if (wrong)
        {
            fields.Problems.Add(fields.PathOf(name), because);
        }
    }

    private static Counted Counter(JsonFields fields)
    {
        double turns = fields.Number("turns", 10, 100_000, required: true) ?? double.NaN,
            counted = fields.Number("counted", 10, 100_000, required: true) ?? double.NaN;
        double doubt = fields.Number("doubt", 0, 10) ?? CounterTest.UsualDoubtTurns;
        Refuse(fields, turns / counted is < 0.5 or > 2, "turns", "a counter this far out is broken or geared: check the test");
        return new Counted(new CounterTest(turns, counted, doubt));
    }

    private static TimedRun Timed(JsonFields fields)
    {
        double? spread = fields.Optional("speedSpread", Spread)?.Si;
        return new TimedRun(
            spread ?? ClockStop.UsualSpeedSpread,
            spread is not null,
            fields.Optional("stopSpread", Stop)?.Si ?? ClockStop.UsualStopS
        );
    }

    private static SpeedRange Speed(JsonFields fields)
    {
        double[] steps = [.. (fields.Quantities("steps", Allowed.Speed, 50) ?? []).Select(step => step.Si).Where(double.IsFinite)];
        if (steps.Length > 0)
        {
            fields.Refuse("low", "give either the steps, or low and high");
            fields.Refuse("high", "give either the steps, or low and high");
            return new SpeedRange(steps.Min(), steps.Max(), steps);
        }

        double low = fields.Required("low", Allowed.Speed).Si,
            high = fields.Required("high", Allowed.Speed).Si;
        Refuse(fields, high < low, "high", "the highest lies below the lowest");
        return new SpeedRange(low, high, []);
    }

    private static Band Tension(JsonFields fields)
    {
        double low = fields.Required("low", Allowed.Tension).Si,
            high = fields.Required("high", Allowed.Tension).Si;
        Refuse(fields, high < low, "high", "the highest lies below the lowest");
        return new Band(low, high);
    }

    private static Dictionary<string, double> OwnTensions(JsonFields fields)
    {
        Dictionary<string, double> own = new(StringComparer.OrdinalIgnoreCase);
        foreach (Own? one in fields.Objects("ownTensions", OwnTension, 60))
        {
            if (one is not null && !own.TryAdd(one.Gauge, one.TensionN))
            {
                fields.Problems.Add(fields.PathOf("ownTensions"), "this gauge is given twice; keep one of them", one.Gauge);
            }
        }

        return own;
    }

    private static Own OwnTension(JsonFields fields)
    {
        string typed = fields.Text("gauge", "AWG 42");
        if (fields.RefusesComma(fields.PathOf("gauge"), typed, comma => [comma.Replace(',', '.')], Catalogue.GaugeRange))
        {
            typed = "";
        }

        WireSize? size = typed.Length == 0 ? null : WireCatalogue.Standard.Find(typed);
        if (typed.Length > 0 && size is null)
        {
            fields.Problems.Add(fields.PathOf("gauge"), "this gauge is in no table", $"\"{typed}\"", Catalogue.GaugeRange);
        }

        return new Own(size?.Gauge ?? typed, fields.Required("tension", Allowed.Tension).Si);
    }

    private sealed record Counted(CounterTest Test);

    private sealed record Band(double LowN, double HighN);

    private sealed record Own(string Gauge, double TensionN);
}
