using Coilwright.Workshop.Pieces;

namespace Coilwright.Web.Forms;

/// <summary>The fields of the final test, also used for what comes back.</summary>
public static class TestForm
{
    /// <summary>Name, label and example of each field, in the order of entry.</summary>
    public static IReadOnlyList<(string Name, string Label, string Example)> Fields { get; } =
    [
        ("resistance", "Resistance", "7.43 k, or open"),
        ("temperature", "Temperature", "the room's"),
        ("inductance", "Inductance", "2.4 H"),
        ("inductanceAt", "at", "1 kHz"),
        ("q", "Q", "2.0"),
        ("qAt", "Q and AC at", "1 kHz"),
        ("acResistance", "AC resistance", ""),
        ("peak", "Peak, where measured", ""),
        ("swing", "First swing", "up or down"),
        ("poles", "Gauss over the poles", "950 948 951 …"),
        ("jig", "Probe at", "1 mm"),
        ("flaws", "Seen by eye", "nothing"),
        ("instrument", "Meter", ""),
    ];

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
