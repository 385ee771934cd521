using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Pieces;

/// <summary>Reads what was typed of a whole piece into readings, or tells every problem.</summary>
internal sealed class TestReader(TestEntry entry, Guid pieceId, double? roomC, DateTimeOffset nowUtc)
{
    internal static readonly Limits Ohm = Quantity.DcResistance.Within(0.1, 1e8, "7.43 k or open");
    internal static readonly Limits Henry = Quantity.Inductance.Within(1e-6, 100, "2.4 H");
    internal static readonly Limits Hertz = Quantity.LoadedPeak.Within(1, 1e6, "1 kHz");
    internal static readonly Limits Field = Quantity.PoleField.Within(-2, 2, "95 mT or 950 G");
    internal static readonly Limits Jig = new(QuantityKind.Length, 0, 0.05, "mm", "1 mm");

    private readonly List<PieceReadingRecord> _readings = [];

    public List<Problem> Problems { get; } = [];

    /// <summary>What the eye found and the first swing are no numbers of an instrument; the swing is kept as +1 or −1.</summary>
    public IReadOnlyList<PieceReadingRecord> Read()
    {
        double? temperatureC =
            entry.Temperature.Trim().Length == 0 ? roomC : Value("temperature", entry.Temperature, PossibleReading.Temperature);
        if (QuantityParser.IsOpen(entry.Resistance))
        {
            Add(Quantity.DcResistance, entry.Resistance, null, temperatureC);
        }
        else if (Value(Quantity.DcResistance.Field, entry.Resistance, Ohm) is { } ohm)
        {
            Add(Quantity.DcResistance, entry.Resistance, ohm, temperatureC);
        }

        double inductanceAt = Value("inductanceAt", entry.InductanceAt, Hertz) ?? 1000,
            qualityAt = Value("qAt", entry.QualityAt, Hertz) ?? 1000;
        At(Quantity.Inductance, entry.Inductance, Henry, inductanceAt);
        At(Quantity.Q, entry.Quality, Plain(Quantity.Q.Field, entry.Quality, 0, 1000), qualityAt);
        At(Quantity.AcResistance, entry.AcResistance, Ohm, qualityAt);
        At(Quantity.LoadedPeak, entry.Peak, Hertz, null);
        Swing();
        Poles();
        if (_readings.Count == 0 && Problems.Count == 0 && entry.Flaws.Trim().Length == 0)
        {
            Problems.Add(new Problem(Quantity.DcResistance.Field, "nothing was measured", null, Ohm.Example));
        }

        return _readings;
    }

    private void Swing()
    {
        string typed = entry.Swing.Trim();
        if (typed.Length == 0)
        {
            return;
        }

        int? sign = typed.ToUpperInvariant() switch
        {
            "UP" or "+" or "POSITIVE" => 1,
            "DOWN" or "-" or "−" or "NEGATIVE" => -1,
            _ => null,
        };
        if (sign is null)
        {
            Problems.Add(new Problem("swing", "the first swing goes up or down", typed, "up, down"));
            return;
        }

        Add(Quantity.FirstSwing, typed, sign, null);
    }

    private void Poles()
    {
        string[] typed = entry.Poles.Split([' ', ';', '\t', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        double jigM = Value("jig", entry.Jig, Jig, "mm") ?? 1e-3;
        for (int pole = 0; pole < typed.Length; pole++)
        {
            if (Value(string.Create(CultureInfo.InvariantCulture, $"poles[{pole + 1}]"), typed[pole], Field, "G") is { } tesla)
            {
                _readings.Add(
                    Reading(Quantity.PoleField, typed[pole]) with
                    {
                        Id = ReadingChain.IdWithin(entry.Id, "pole" + pole.ToString(CultureInfo.InvariantCulture)),
                        Si = tesla,
                        Pole = pole + 1,
                        DistanceM = jigM,
                    }
                );
            }
        }
    }

    private void At(Quantity quantity, string typed, Limits limits, double? hz) =>
        At(quantity, typed, Value(quantity.Field, typed, limits), hz);

    private void At(Quantity quantity, string typed, double? si, double? hz)
    {
        if (si is not null)
        {
            _readings.Add(Reading(quantity, typed) with { Si = si, AtHz = hz });
        }
    }

    private void Add(Quantity quantity, string typed, double? si, double? temperatureC) =>
        _readings.Add(Reading(quantity, typed) with { Si = si, TemperatureC = temperatureC });

    private PieceReadingRecord Reading(Quantity quantity, string typed) =>
        new()
        {
            Id = ReadingChain.IdWithin(entry.Id, quantity.Key),
            PieceId = pieceId,
            EventId = entry.Id,
            Quantity = quantity.Key,
            Typed = typed.Trim(),
            Instrument = entry.Instrument.Trim(),
            TimeUtc = nowUtc,
        };

    private double? Plain(string field, string typed, double min, double max)
    {
        if (typed.Trim().Length == 0)
        {
            return null;
        }

        if (!CountParser.TryNumber(typed, out double value) || !(value > min && value <= max))
        {
            Problems.Add(
                new Problem(
                    field,
                    "a plain number is needed",
                    typed,
                    string.Create(CultureInfo.InvariantCulture, $"above {min}, up to {max}")
                )
            );
            return null;
        }

        return value;
    }

    private double? Value(string field, string typed, Limits limits, string? customary = null)
    {
        if (typed.Trim().Length == 0)
        {
            return null;
        }

        if (
            !QuantityParser.TryParse(typed, limits, unitRequired: false, out Entered entered, out string why, customary)
            || !limits.Allows(entered.Si)
        )
        {
            Problems.Add(new Problem(field, why.Length > 0 ? why : limits.Outside, typed, $"{limits.Range}, for example {limits.Example}"));
            return null;
        }

        return entered.Si;
    }
}
