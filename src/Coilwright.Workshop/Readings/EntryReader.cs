using System.Globalization;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Readings;

/// <summary>Turns what a person typed for one coil into readings. What cannot be understood is kept as typed, with a flag.</summary>
/// <param name="entry">As typed.</param>
/// <param name="tag">The coil's tag, tidied.</param>
/// <param name="room">Room temperature in force, or null.</param>
/// <param name="nowUtc">When it arrived.</param>
internal sealed class EntryReader(CoilEntry entry, string tag, RoomTemperature? room, DateTimeOffset nowUtc)
{
    private const double UsualInductanceHz = 1000;

    private readonly List<ReadingRecord> _readings = [];
    private readonly List<string> _doubts = [];

    /// <summary>The readings, the first under the entry's own id; empty when nothing was measured.</summary>
    public IReadOnlyList<ReadingRecord> Read()
    {
        double? temperatureC = Temperature(), turns = Optional(entry.Turns, QuantityKind.Turns, "turns", IsCount);
        if (!string.IsNullOrWhiteSpace(entry.Resistance))
        {
            Add("dcResistance", entry.Resistance, QuantityKind.Resistance, "Ω", temperatureC, turns, atHz: null);
        }

        if (!string.IsNullOrWhiteSpace(entry.Inductance))
        {
            double? atHz = Optional(entry.InductanceAt, QuantityKind.Frequency, "frequency", IsFrequency);
            Add("inductance", entry.Inductance, QuantityKind.Inductance, "H", temperatureC, turns, atHz ?? UsualInductanceHz);
        }

        return _readings;
    }

    /// <summary>A reading anew, for a correction: what is written as it stood keeps its figure.</summary>
    /// <param name="old">The reading before.</param>
    /// <param name="stands">How it stood in the form.</param>
    /// <param name="wanted">How it is to stand.</param>
    public ReadingRecord Again(ReadingRecord old, ReadingAsWritten stands, ReadingAsWritten wanted)
    {
        double? temperatureC = wanted.Temperature == stands.Temperature ? old.TemperatureC
            : Optional(wanted.Temperature, QuantityKind.Temperature, "temperature", PossibleReading.Temperature.Allows);
        double? turns = wanted.Turns == stands.Turns ? old.Turns : Optional(wanted.Turns, QuantityKind.Turns, "turns", IsCount);
        double? atHz = wanted.At == stands.At ? old.AtHz : Optional(wanted.At, QuantityKind.Frequency, "frequency", IsFrequency) ?? old.AtHz;
        (QuantityKind? kind, string unit) = old.Quantity switch
        {
            "inductance" => (QuantityKind.Inductance, "H"),
            "dcResistance" => (QuantityKind.Resistance, "Ω"),
            _ => ((QuantityKind?)null, ""),
        };
        Add(old.Quantity, wanted.Value, kind, unit, temperatureC, turns, atHz);
        return _readings[^1] with { Instrument = old.Instrument, NewCoil = old.NewCoil };
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

        string value = reading.Quantity is "inductance" or "dcResistance"
            ? QuantityText.Echo(new Entered(si, reading.Typed, reading.Unit), kind)
            : string.Create(CultureInfo.InvariantCulture, $"{reading.Quantity.ToUpperInvariant()} {si:0.###}");
        if (reading.AtHz is { } hz)
        {
            return $"{value} at {QuantityText.Format(hz, QuantityKind.Frequency)}";
        }

        return reading.TemperatureC is { } celsius && reading.Flag.Length == 0
            ? $"{value} at {QuantityText.Format(celsius, QuantityKind.Temperature)} → {At20C(reading.Quantity, si, celsius)}"
            : $"{value}{(reading.Flag.Length > 0 ? ", " + reading.Flag : ", temperature not known: ±2 % unknown")}";
    }

    private static string At20C(string quantity, double si, double celsius) =>
        QuantityText.Format(ComparableValue.Of(quantity, si, celsius), QuantityKind.Resistance, 4) + " at 20 °C";

    private void Add(string quantity, string typed, QuantityKind? kind, string usualUnit, double? temperatureC, double? turns, double? atHz)
    {
        bool open = quantity == "dcResistance" && QuantityText.IsOpen(typed);
        bool understood = kind is { } known
            ? QuantityText.TryParse(typed, known, unitRequired: false, out Entered entered, out string why)
            : TryBare(typed, out entered, out why);
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
            NewCoil = entry.Coil.Length == 0 ? null : entry.Coil == SpoolQuestion.New,
            Flag = flag == PossibleReading.Open ? flag : string.Join("; ", (string[])[.. flag.Length > 0 ? [flag] : Array.Empty<string>(), .. _doubts]),
        });
        _doubts.Clear();
    }

    /// <summary>A number without a unit, as a Q is.</summary>
    private static bool TryBare(string typed, out Entered entered, out string why)
    {
        bool understood = double.TryParse(typed.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double value);
        entered = new Entered(value, typed, "");
        why = understood ? "" : $"\"{typed}\" is not a number";
        return understood;
    }

    private static bool IsCount(double turns) => turns is > 0 and <= 1e6;

    private static bool IsFrequency(double hz) => hz is > 0 and <= 1e7;

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
