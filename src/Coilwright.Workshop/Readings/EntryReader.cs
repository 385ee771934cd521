using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Readings;

/// <summary>Turns what a person typed for one coil into readings. What cannot be understood is kept as typed, with a flag.</summary>
/// <param name="entry">As typed.</param>
/// <param name="tag">The coil's tag, tidied.</param>
/// <param name="room">Room temperature in force, or null.</param>
/// <param name="nowUtc">When it arrived.</param>
/// <param name="expectedOhm">What a good coil reads; decides what "6,210" means.</param>
internal sealed class EntryReader(CoilEntry entry, string tag, RoomTemperature? room, DateTimeOffset nowUtc, double expectedOhm)
{
    /// <summary>How far from a good coil's ohms a reading may lie to decide what "6,210" means: the two readings lie a factor of 1000 apart, so that one of them at most lies this near. Our choice.</summary>
    private const double Reach = 8;

    private const double UsualInductanceHz = 1000;

    private readonly List<ReadingRecord> _readings = [];
    private readonly List<string> _doubts = [];

    /// <summary>What can mean two things and must be said again; anything else is kept as typed.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>The readings, the first under the entry's own id; empty when nothing was measured.</summary>
    public IReadOnlyList<ReadingRecord> Read()
    {
        double? temperatureC = Temperature(), turns = Optional(entry.Turns, QuantityKind.Turns, "turns", si => si is > 0 and <= 1e6);
        if (!string.IsNullOrWhiteSpace(entry.Resistance))
        {
            Add("dcResistance", entry.Resistance, QuantityKind.Resistance, "Ω", temperatureC, turns, atHz: null);
        }

        if (!string.IsNullOrWhiteSpace(entry.Inductance))
        {
            double? atHz = Optional(entry.InductanceAt, QuantityKind.Frequency, "frequency", si => si is > 0 and <= 1e7);
            Add("inductance", entry.Inductance, QuantityKind.Inductance, "H", temperatureC, turns, atHz ?? UsualInductanceHz);
        }

        return _readings;
    }

    /// <summary>How a reading was understood, with what it is at 20 °C.</summary>
    public static string Echo(IReadOnlyList<ReadingRecord> readings) => string.Join("; ", readings.Where(reading => !reading.Withdraws).Select(Echo));

    private static string Echo(ReadingRecord reading)
    {
        if (reading.Flag == PossibleReading.Open)
        {
            return "open";
        }

        QuantityKind kind = reading.Quantity == "inductance" ? QuantityKind.Inductance : QuantityKind.Resistance;
        if (reading.Si is not { } si)
        {
            return $"\"{reading.Typed}\" is kept as typed: {reading.Flag}";
        }

        string value = QuantityText.Echo(new Entered(si, reading.Typed, reading.Unit), kind);
        if (reading.AtHz is { } hz)
        {
            return $"{value} at {QuantityText.Format(hz, QuantityKind.Frequency)}";
        }

        return reading.TemperatureC is { } celsius && reading.Flag.Length == 0
            ? $"{value} at {QuantityText.Format(celsius, QuantityKind.Temperature)} → {QuantityText.Format(CopperWire.CorrectTo20C(si, celsius), QuantityKind.Resistance, 4)} at 20 °C"
            : $"{value}{(reading.Flag.Length > 0 ? ", " + reading.Flag : ", temperature not known: ±2 % unknown")}";
    }

    private void Add(string quantity, string typed, QuantityKind kind, string usualUnit, double? temperatureC, double? turns, double? atHz)
    {
        bool open = quantity == "dcResistance" && QuantityText.IsOpen(typed);
        TypedQuantity read = QuantityText.Read(typed, RangeOf(kind), unitRequired: false);
        (Entered entered, string why, bool understood) = (read.Entered, read.Why, read.Entered.IsKnown);
        if (read.Readings.Count > 0)
        {
            Problems.Add(new Problem(kind == QuantityKind.Resistance ? "resistance" : "inductance", read.Why, typed));
        }

        string flag = open || (understood && PossibleReading.IsOverRange(entered.Si)) ? PossibleReading.Open
            : understood ? PossibleReading.FlagOf(quantity, entered.Si)
            : "not understood: " + why;
        bool first = _readings.Count == 0;
        _readings.Add(new ReadingRecord
        {
            Id = first ? entry.Id : ReadingChain.IdWithin(entry.Id, quantity),
            BatchId = entry.BatchId,
            Tag = tag,
            Quantity = quantity,
            Typed = typed,
            Unit = understood ? entered.UnitTyped : usualUnit,
            Si = understood && flag != PossibleReading.Open ? entered.Si : null,
            TemperatureC = temperatureC,
            AtHz = atHz,
            Turns = first ? turns : null,
            Instrument = entry.Instrument.Trim(),
            Person = entry.Person.Trim(),
            TimeUtc = nowUtc,
            Flag = flag == PossibleReading.Open ? flag : string.Join("; ", (string[])[.. flag.Length > 0 ? [flag] : Array.Empty<string>(), .. _doubts]),
        });
        _doubts.Clear();
    }

    private Limits RangeOf(QuantityKind kind) => kind == QuantityKind.Resistance
        ? new Limits(kind, expectedOhm / Reach, expectedOhm * Reach, "Ω", "6.2 kΩ")
        : new Limits(kind, 1e-6, PossibleReading.LargestHenry, "H", "2.4 H");

    private double? Temperature()
    {
        if (string.IsNullOrWhiteSpace(entry.Temperature))
        {
            return room?.TemperatureC;
        }

        return Optional(entry.Temperature, QuantityKind.Temperature, "temperature", PossibleReading.Temperature.Allows);
    }

    /// <summary>A value that goes with a reading. Doubtful, it is left out, and the flag of the reading says what was typed.</summary>
    private double? Optional(string typed, QuantityKind kind, string name, Func<double, bool> possible)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        if (QuantityText.TryParse(typed, kind, unitRequired: false, out Entered entered, out string why) && possible(entered.Si))
        {
            return entered.Si;
        }

        _doubts.Add($"{name} \"{typed.Trim()}\" is {(why.Length > 0 ? "not understood" : "not possible")}");
        return null;
    }
}
