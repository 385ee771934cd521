using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>
/// Turns what a person typed for one coil into readings. What is no reading of a coil is a problem, and stands flagged in the readings for
/// an entry that must be kept as it is.
/// </summary>
/// <param name="entry">As typed.</param>
/// <param name="tag">The coil's tag, tidied.</param>
/// <param name="room">Room temperature in force, or null.</param>
/// <param name="nowUtc">When it arrived.</param>
/// <param name="expectedOhm">What a good coil reads; decides what "6,210" means.</param>
internal sealed class EntryReader(CoilEntry entry, string tag, RoomTemperature? room, DateTimeOffset nowUtc, double expectedOhm)
{
    private const double UsualInductanceHz = 1000;

    private readonly List<ReadingRecord> _readings = [];
    private readonly List<string> _doubts = [];
    private readonly List<Problem> _problems = [];

    /// <summary>What was typed that no coil can read, field by field.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>The readings, the first under the entry's own id; empty when nothing was measured.</summary>
    public IReadOnlyList<ReadingRecord> Read()
    {
        double? temperatureC = Temperature(),
            turns = Turns(entry.Turns);
        if (!string.IsNullOrWhiteSpace(entry.Resistance))
        {
            Add(QuantityKey.DcResistance, entry.Resistance, temperatureC, turns, atHz: null);
        }

        if (!string.IsNullOrWhiteSpace(entry.Inductance))
        {
            double? atHz = Frequency(entry.InductanceAt);
            Add(QuantityKey.Inductance, entry.Inductance, temperatureC, turns, atHz ?? UsualInductanceHz);
        }

        return _readings;
    }

    /// <summary>A reading anew, for a correction: what is written as it stood keeps its figure.</summary>
    /// <param name="old">The reading before.</param>
    /// <param name="stands">How it stood in the form.</param>
    /// <param name="wanted">How it is to stand.</param>
    public ReadingRecord Again(ReadingRecord old, ReadingAsWritten stands, ReadingAsWritten wanted)
    {
        double? temperatureC =
            wanted.Temperature == stands.Temperature
                ? old.TemperatureC
                : Optional(
                    wanted.Temperature,
                    PossibleReading.Temperature,
                    "temperature",
                    "temperature",
                    PossibleReading.Temperature.Range
                );
        double? turns = wanted.Turns == stands.Turns ? old.Turns : Turns(wanted.Turns);
        double? atHz = wanted.At == stands.At ? old.AtHz : Frequency(wanted.At) ?? old.AtHz;
        Add(old.Quantity, wanted.Value, temperatureC, turns, atHz);
        return _readings[^1] with { Instrument = old.Instrument, NewCoil = old.NewCoil };
    }

    /// <summary>How a reading was understood, with what it is at 20 °C.</summary>
    public static string Echo(IReadOnlyList<ReadingRecord> readings) =>
        string.Join("; ", readings.Where(reading => !reading.Withdraws).Select(Echo));

    private static string Echo(ReadingRecord reading)
    {
        if (reading.Flag == PossibleReading.Open)
        {
            return "open";
        }

        if (reading.Si is not { } si)
        {
            return $"\"{reading.Typed}\" is kept as typed: {reading.Flag}";
        }

        string value = Quantity.Find(reading.Quantity) is { Kind: { } kind }
            ? QuantityParser.Echo(new Entered(si, reading.Typed, reading.Unit), kind)
            : string.Create(CultureInfo.InvariantCulture, $"{reading.Quantity.ToUpperInvariant()} {si:0.###}");
        if (reading.AtHz is { } hz)
        {
            return $"{value} at {QuantityParser.Format(hz, QuantityKind.Frequency)}";
        }

        if (reading.Flag.Length > 0)
        {
            return $"{value}, {reading.Flag}";
        }

        return reading.TemperatureC is { } celsius
            ? $"{value} at {QuantityParser.Format(celsius, QuantityKind.Temperature)} → {At20C(reading.Quantity, si, celsius)}"
            : value + ", temperature not recorded, so ±2 %";
    }

    private static string At20C(string quantity, double si, double celsius) =>
        QuantityParser.Format(Quantity.Comparable(quantity, si, celsius), QuantityKind.Resistance, 4) + " at 20 °C";

    private void Add(string quantity, string typed, double? temperatureC, double? turns, double? atHz)
    {
        Quantity? about = Quantity.Find(quantity);
        bool open = quantity == QuantityKey.DcResistance && QuantityParser.IsOpen(typed);
        ParsedQuantity read = about?.Kind is { } known ? Understand(typed, known) : Bare(typed);
        (Entered entered, string why, bool understood) = (read.Entered, read.Why, read.Entered.IsKnown);
        string doubt = understood ? PossibleReading.FlagOf(quantity, entered.Si) : "not understood: " + why;
        string flag = open || (understood && PossibleReading.IsOverRange(entered.Si)) ? PossibleReading.Open : doubt;
        if (flag.Length > 0 && flag != PossibleReading.Open)
        {
            (string field, string allowed) =
                quantity == QuantityKey.Inductance
                    ? (Quantity.Inductance.Field, "above 0 to 1,000 H, for example 2.41 H")
                    : (
                        Quantity.DcResistance.Field,
                        "0 to 20 MΩ, for example 7.43 k, 7k43 or 7430; open or OL when the meter finds no connection"
                    );
            _problems.Add(new Problem(field, understood ? "no coil reads that" : why, typed.Trim(), allowed) { Readings = Choice(read) });
        }

        bool first = _readings.Count == 0;
        _readings.Add(
            new ReadingRecord
            {
                Id = first ? entry.Id : ReadingChain.IdWithin(entry.Id, quantity),
                BatchId = entry.BatchId,
                Tag = tag,
                Quantity = quantity,
                Typed = typed,
                Unit = understood ? entered.UnitTyped : about?.Unit ?? "",
                Si = understood && flag != PossibleReading.Open ? entered.Si : null,
                TemperatureC = temperatureC,
                AtHz = atHz,
                Turns = first ? turns : null,
                Instrument = entry.Instrument.Trim(),
                Person = entry.Person.Trim(),
                TimeUtc = nowUtc,
                NewCoil = entry.Coil.Length == 0 ? null : entry.Coil == SpoolQuestion.New,
                Flag = flag == PossibleReading.Open ? flag : string.Join("; ", _doubts.Prepend(flag).Where(told => told.Length > 0)),
            }
        );
        _doubts.Clear();
    }

    private ParsedQuantity Understand(string typed, QuantityKind kind) =>
        QuantityParser.Read(
            typed,
            kind == QuantityKind.Resistance ? PossibleReading.Near(expectedOhm) : PossibleReading.Inductance,
            unitRequired: false
        );

    /// <summary>A number without a unit, as a Q is.</summary>
    private static ParsedQuantity Bare(string typed) =>
        CountParser.TryNumber(typed, out double value)
            ? new ParsedQuantity(new Entered(value, typed, ""), "")
            : new ParsedQuantity(Entered.Unknown, $"\"{typed}\" is not a number");

    private static IReadOnlyList<string>? Choice(ParsedQuantity read) => read.Readings.Count > 0 ? read.Readings : null;

    private double? Turns(string typed) => Optional(typed, PossibleReading.Turns, "turns", "turns", "1 to 1,000,000");

    private double? Frequency(string typed) =>
        Optional(typed, PossibleReading.Frequency, "inductanceAt", "frequency", "up to 10 MHz, for example 1 kHz");

    private double? Temperature()
    {
        if (string.IsNullOrWhiteSpace(entry.Temperature))
        {
            return room?.TemperatureC;
        }

        return Optional(entry.Temperature, PossibleReading.Temperature, "temperature", "temperature", PossibleReading.Temperature.Range);
    }

    /// <summary>A value that goes with a reading. Doubtful, it is left out, and the flag of the reading says what was typed.</summary>
    private double? Optional(string typed, Limits limits, string field, string name, string allowed)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        ParsedQuantity read = QuantityParser.Read(typed, limits, unitRequired: false);
        if (read.Entered.IsKnown && limits.Allows(read.Entered.Si))
        {
            return read.Entered.Si;
        }

        string why = read.Entered.IsKnown ? $"this {name} is not possible" : read.Why;
        _problems.Add(new Problem(field, why, typed.Trim(), allowed) { Readings = Choice(read) });
        _doubts.Add($"{name} \"{typed.Trim()}\" is {(read.Entered.IsKnown ? "not possible" : "not understood")}");
        return null;
    }
}
