using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Web.Forms;

/// <summary>The fields of the final test, also used for what comes back.</summary>
public static class TestForm
{
    /// <summary>Name, label, example and the quantity it is held against of each field but the swing, in the order of entry.</summary>
    public static IReadOnlyList<(string Name, string Label, string Example, string Quantity)> Fields { get; } =
    [
        ("resistance", "Resistance", "7.43 k, or open", QuantityKey.DcResistance),
        ("temperature", "Temperature", "the room's", ""),
        ("inductance", "Inductance", "2.4 H", QuantityKey.Inductance),
        ("inductanceAt", "at", "1 kHz", ""),
        ("q", "Q", "2.0", QuantityKey.Q),
        ("qAt", "Q and AC at", "1 kHz", ""),
        ("acResistance", "AC resistance", "", QuantityKey.AcResistance),
        ("peak", "Peak, where measured", "", QuantityKey.LoadedPeak),
        ("poles", "Gauss over the poles", "950 948 951 …", ""),
        ("jig", "Probe at", "1 mm", ""),
        ("flaws", "Seen by eye", "nothing", ""),
        ("instrument", "Meter", "", ""),
    ];

    /// <summary>Fields that stand at once: the ohms with their temperature, and what a piece cannot pass without.</summary>
    /// <param name="asked">What is asked of the piece; null where nothing is.</param>
    public static IReadOnlySet<string> First(FinalTest? asked)
    {
        HashSet<string> needed = [.. asked?.Lines.Where(line => line.Needed).Select(line => line.Quantity) ?? []];
        HashSet<string> first =
        [
            "resistance",
            "temperature",
            .. Fields.Where(one => needed.Contains(one.Quantity)).Select(one => one.Name),
        ];
        if (first.Contains("inductance"))
        {
            first.Add("inductanceAt");
        }

        if (first.Contains("q") || first.Contains("acResistance"))
        {
            first.Add("qAt");
        }

        return first;
    }

    /// <summary>What was typed.</summary>
    public static TestEntry Read(FormValues typed, string serial) =>
        new()
        {
            Id = typed.Id,
            Serial = serial,
            Resistance = MeterEntryParser.Of(typed["resistance"]),
            Temperature = typed["temperature"],
            Inductance = typed["inductance"],
            InductanceAt = typed["inductanceAt"],
            Quality = typed["q"],
            QualityAt = typed["qAt"],
            AcResistance = typed["acResistance"],
            Peak = typed["peak"],
            Swing = typed["swing"],
            Poles = typed["poles"],
            Jig = typed["jig"],
            Flaws = typed["flaws"],
            Instrument = typed["instrument"],
            Person = typed["person"],
            Golden = typed["golden"].Length > 0,
        };
}
