using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Coilwright.Formats.Csv;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Formats.Tables;

/// <summary>Reads one line of a table of readings.</summary>
internal sealed class RowReader(ReadingTable.Column[] columns, string[] cells, int line, List<Problem> problems, DateTimeOffset readUtc)
{
    private const double UsualInductanceHz = 1000;

    private const double UsualQHz = 3000;

    /// <summary>How the table's numbers are written.</summary>
    public TableNumbers Numbers { get; init; }

    private const double LargestQ = 1e6;

    /// <summary>
    /// What a cell may hold at all. Within it an impossible reading is kept and judged; beyond it a digit slipped or a column was mixed up.
    /// </summary>
    private static readonly Dictionary<string, Limits> s_limits = new(StringComparer.Ordinal)
    {
        ["dcResistance"] = new(QuantityKind.Resistance, 0, 1e12, "GΩ", "6.2 kΩ"),
        ["temperature"] = new(QuantityKind.Temperature, -40, 155, "°C", "21 °C"),
        ["inductance"] = new(QuantityKind.Inductance, 0, 1e5, "H", "2.4 H"),
        ["inductanceAt"] = new(QuantityKind.Frequency, 0.1, 1e8, "Hz", "1 kHz"),
        ["qAt"] = new(QuantityKind.Frequency, 0.1, 1e8, "Hz", "3 kHz"),
        ["turns"] = new(QuantityKind.Turns, 0, 1e6, "turns", "8000"),
    };

    public ReadingRow Read()
    {
        string tag = Cell("tag");
        if (tag.Length == 0)
        {
            problems.Add(new Problem(Place("tag"), "the tag is missing"));
        }

        List<ReadingRecord> readings = [];
        double? temperatureC = Quantity("temperature")?.Si,
            turns = Quantity("turns")?.Si;
        if (Cell("dcResistance").Length > 0)
        {
            readings.Add(Resistance(tag) with { TemperatureC = temperatureC, Turns = turns });
        }

        if (Quantity("inductance") is { } inductance)
        {
            readings.Add(
                Record(tag, "inductance", inductance) with
                {
                    AtHz = Quantity("inductanceAt")?.Si ?? UsualInductanceHz,
                    TemperatureC = temperatureC,
                    Turns = turns,
                }
            );
        }

        if (Cell("q") is { Length: > 0 } typedQ)
        {
            readings.Add(Quality(tag, typedQ) with { AtHz = Quantity("qAt")?.Si ?? UsualQHz, Turns = turns });
        }

        Dictionary<string, string> carried = [];
        for (int index = 0; index < columns.Length; index++)
        {
            if (columns[index].Name.Length == 0 && cells[index].Length > 0)
            {
                carried[columns[index].Heading] = cells[index];
            }
        }

        return new ReadingRow(tag, readings, carried) { Spool = Cell("spool") };
    }

    private ReadingRecord Resistance(string tag)
    {
        string typed = Cell("dcResistance");
        Entered? read = QuantityParser.IsOpen(typed) ? null : Quantity("dcResistance");
        return QuantityParser.IsOpen(typed) || (read is { } known && PossibleReading.IsOverRange(known.Si))
            ? Record(tag, "dcResistance", new Entered(0, typed, "Ω")) with
            {
                Si = null,
                Flag = "open",
            }
            : Record(tag, "dcResistance", read ?? Entered.Unknown);
    }

    private ReadingRecord Quality(string tag, string typed)
    {
        if (!Numbers.TryNumber(typed, out double q, out string why) || !(q > 0 && q <= LargestQ))
        {
            problems.Add(
                new Problem(
                    Place("q"),
                    why.Length > 0 ? why : $"\"{typed}\" is not a quality factor",
                    Allowed: "a number above 0, up to 1,000,000"
                )
            );
        }

        return Record(tag, "q", new Entered(q, typed, "1"));
    }

    private ReadingRecord Record(string tag, string quantity, Entered entered) =>
        new()
        {
            Id = IdOf(tag + "/" + quantity),
            BatchId = Guid.Empty,
            Tag = tag,
            Quantity = quantity,
            Typed = entered.Typed ?? "",
            Unit = entered.UnitTyped ?? "",
            Si = entered.IsKnown ? entered.Si : null,
            TimeUtc = Time(),
        };

    private DateTimeOffset Time()
    {
        string typed = Cell("time");
        if (typed.Length == 0)
        {
            return readUtc;
        }

        if (
            !DateTimeOffset.TryParse(
                typed,
                CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
                out DateTimeOffset time
            )
        )
        {
            problems.Add(new Problem(Place("time"), $"\"{typed}\" is not a time", Allowed: "for example 2026-03-02T14:32:00Z"));
        }

        return time;
    }

    private Entered? Quantity(string name)
    {
        string typed = Cell(name);
        ReadingTable.Column? column = columns.FirstOrDefault(candidate => candidate.Name == name);
        if (typed.Length == 0 || column is not { Kind: { } kind })
        {
            return null;
        }

        if (!Numbers.TryQuantity(typed, kind, column.Unit, out Entered entered, out string why))
        {
            problems.Add(new Problem(Place(name), why, Allowed: $"a number in {column.Unit}, or empty"));
            return null;
        }

        Limits limits = s_limits[name];
        if (limits.Allows(entered.Si) || (name == "dcResistance" && PossibleReading.IsOverRange(entered.Si) && entered.Si < 1e39))
        {
            return entered;
        }

        problems.Add(new Problem(Place(name), limits.Outside, QuantityParser.Echo(entered, kind), $"{limits.Range}, or empty"));
        return null;
    }

    private string Cell(string name)
    {
        int index = Array.FindIndex(columns, column => column.Name == name);
        return index < 0 ? "" : cells[index];
    }

    private string Place(string column) => string.Create(CultureInfo.InvariantCulture, $"line {line}, {column}");

    /// <summary>The same row gives the same id, so that a table read twice is the same readings.</summary>
    private static Guid IdOf(string text) => new(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 16));
}
