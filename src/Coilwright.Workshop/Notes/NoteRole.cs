using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Notes;

/// <summary>What a column of somebody's old notes can be read as.</summary>
/// <param name="Key">As in the table that <c>judge</c> takes.</param>
/// <param name="Label">For people.</param>
/// <param name="Kind">What it measures; null for words and times.</param>
/// <param name="Names">Headings that mean it, in small letters without signs.</param>
public sealed record NoteRole(string Key, string Label, QuantityKind? Kind, IReadOnlyList<string> Names)
{
    /// <summary>The coil.</summary>
    public static readonly NoteRole Tag = new(
        "tag",
        "tag of the coil",
        null,
        ["tag", "coil", "coilno", "coilnumber", "no", "nr", "number", "id"]
    );

    /// <summary>DC resistance.</summary>
    public static readonly NoteRole Resistance = new(
        QuantityKey.DcResistance,
        "DC resistance",
        QuantityKind.Resistance,
        ["dcresistance", "resistance", "dcr", "rdc", "dc", "r", "res", "ohm", "ohms", "kohm", "kohms", "kω", "ω"]
    );

    /// <summary>Inductance.</summary>
    public static readonly NoteRole Inductance = new(
        QuantityKey.Inductance,
        "inductance",
        QuantityKind.Inductance,
        ["inductance", "ind", "l", "ls", "henry", "henries", "h", "mh"]
    );

    /// <summary>Frequency of the inductance.</summary>
    public static readonly NoteRole InductanceAt = new(
        "inductanceAt",
        "frequency of the inductance",
        QuantityKind.Frequency,
        ["inductanceat", "lat", "at", "frequency", "freq", "testfrequency", "testfreq", "f", "hz", "khz"]
    );

    /// <summary>Temperature of the coil.</summary>
    public static readonly NoteRole Temperature = new(
        "temperature",
        "temperature",
        QuantityKind.Temperature,
        ["temperature", "temp", "t", "celsius", "degc", "c", "roomtemperature", "room", "fahrenheit"]
    );

    /// <summary>What the counter showed.</summary>
    public static readonly NoteRole Turns = new("turns", "turns", QuantityKind.Turns, ["turns", "count", "counter", "winds", "n"]);

    /// <summary>Which meter.</summary>
    public static readonly NoteRole Instrument = new("instrument", "meter", null, ["instrument", "meter", "multimeter", "lcr", "lcrmeter"]);

    /// <summary>Who read it.</summary>
    public static readonly NoteRole Person = new("person", "person", null, ["person", "who", "by", "woundby", "operator", "initials"]);

    /// <summary>When it was read.</summary>
    public static readonly NoteRole Time = new("time", "time", null, ["time", "date", "when", "day", "datetime"]);

    /// <summary>All of them.</summary>
    public static IReadOnlyList<NoteRole> All { get; } =
    [Tag, Resistance, Inductance, InductanceAt, Temperature, Turns, Instrument, Person, Time];
}
