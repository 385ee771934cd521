using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Curves;

/// <summary>Which column holds what, and in which unit.</summary>
internal sealed partial class CurveColumns
{
    private static readonly Dictionary<string, CurveColumn> s_names = new(StringComparer.Ordinal)
    {
        ["frequency"] = CurveColumn.Frequency,
        ["freq"] = CurveColumn.Frequency,
        ["f"] = CurveColumn.Frequency,
        ["gain"] = CurveColumn.Gain,
        ["level"] = CurveColumn.Gain,
        ["response"] = CurveColumn.Gain,
        ["magnitude"] = CurveColumn.Gain,
        ["spl"] = CurveColumn.Gain,
        ["phase"] = CurveColumn.Phase,
        ["angle"] = CurveColumn.Phase,
        ["impedance"] = CurveColumn.Impedance,
        ["z"] = CurveColumn.Impedance,
        ["|z|"] = CurveColumn.Impedance,
        ["real"] = CurveColumn.Real,
        ["re"] = CurveColumn.Real,
        ["resistance"] = CurveColumn.Real,
        ["r"] = CurveColumn.Real,
        ["imaginary"] = CurveColumn.Imaginary,
        ["imag"] = CurveColumn.Imaginary,
        ["im"] = CurveColumn.Imaginary,
        ["reactance"] = CurveColumn.Imaginary,
        ["x"] = CurveColumn.Imaginary,
    };

    private readonly Dictionary<CurveColumn, (int Index, double Scale, bool Ratio)> _columns = [];
    private readonly string[] _headings;

    private CurveColumns(CurveLines lines, List<Problem> problems)
    {
        _headings = lines.Header;
        List<string> echo = [];
        for (int i = 0; i < _headings.Length; i++)
        {
            echo.Add(Understand(i, lines.HeaderLine, problems));
        }

        Echo = echo;
        if (_headings.Length > 0)
        {
            CheckTogether(lines.HeaderLine, problems);
        }
    }

    public IReadOnlyList<string> Echo { get; }

    public int Count => _headings.Length;

    public static CurveColumns Of(CurveLines lines, List<Problem> problems) => new(lines, problems);

    public bool Has(CurveColumn column) => _columns.ContainsKey(column);

    /// <summary>Columns that must hold a number in every line.</summary>
    public IEnumerable<CurveColumn> Needed => _columns.Keys;

    public (int Index, double Scale, bool Ratio) this[CurveColumn column] => _columns[column];

    public string Place(int line, CurveColumn column) =>
        FormattableString.Invariant($"line {line}, column {_columns[column].Index + 1} \"{_headings[_columns[column].Index]}\"");

    private string Understand(int index, int line, List<Problem> problems)
    {
        Match match = Heading().Match(_headings[index]);
        string name = match.Groups["name"].Value.Trim().ToLowerInvariant(),
            unit = match.Groups["unit"].Value.Trim();
        if (
            !s_names.TryGetValue(name, out CurveColumn column)
            || (
                column == CurveColumn.Gain
                && UnitTable.Find(QuantityKind.Resistance, unit) is not null
                && unit.Length > 0
                && name == "magnitude"
            )
        )
        {
            if (name != "magnitude")
            {
                return $"\"{_headings[index]}\": not used";
            }

            column = CurveColumn.Impedance;
        }

        if (_columns.ContainsKey(column))
        {
            problems.Add(new Problem($"line {line}, column {index + 1}", "a second column of the same kind", _headings[index]));
            return "";
        }

        if (Scale(column, unit) is not { } scale)
        {
            problems.Add(
                new Problem($"line {line}, column {index + 1}", $"\"{unit}\" is not a unit of this column", _headings[index], Units(column))
            );
            return "";
        }

        _columns[column] = (index, scale.Factor, scale.Ratio);
        string taken = unit.Length > 0 ? scale.Symbol : scale.Symbol + " (taken; the header names no unit)";
        return $"{Word(column)} in {taken}";
    }

    private void CheckTogether(int line, List<Problem> problems)
    {
        string place = $"line {line}",
            given = string.Join(", ", _headings);
        if (!Has(CurveColumn.Frequency))
        {
            problems.Add(new Problem(place, "there is no column \"frequency [Hz]\"", given));
        }

        if (Has(CurveColumn.Real) != Has(CurveColumn.Imaginary))
        {
            problems.Add(
                new Problem(
                    place,
                    Has(CurveColumn.Real) ? "the real part needs its imaginary part" : "the imaginary part needs its real part",
                    given,
                    "real [Ω],imaginary [Ω]"
                )
            );
        }
        else if (!Has(CurveColumn.Real) && Has(CurveColumn.Impedance) && !Has(CurveColumn.Phase))
        {
            problems.Add(
                new Problem(
                    place,
                    "an impedance without its phase does not tell inductance from resistance",
                    given,
                    "impedance [Ω],phase [deg] or real [Ω],imaginary [Ω]"
                )
            );
        }
        else if (!Has(CurveColumn.Real) && !Has(CurveColumn.Impedance) && !Has(CurveColumn.Gain))
        {
            problems.Add(
                new Problem(
                    place,
                    "there is neither a gain nor an impedance",
                    given,
                    "gain [dB]; impedance [Ω],phase [deg]; or real [Ω],imaginary [Ω]"
                )
            );
        }
    }

    private static (double Factor, string Symbol, bool Ratio)? Scale(CurveColumn column, string unit) =>
        column switch
        {
            CurveColumn.Frequency => Of(QuantityKind.Frequency, unit, "Hz"),
            CurveColumn.Impedance or CurveColumn.Real or CurveColumn.Imaginary => Of(QuantityKind.Resistance, unit, "Ω"),
            CurveColumn.Gain => unit.ToLowerInvariant() switch
            {
                "" or "db" or "dbv" or "dbu" or "dbfs" or "dbr" => (1, "dB", false),
                "1" or "ratio" or "v/v" or "v" or "mv" => (1, "ratio, turned into dB", true),
                _ => null,
            },
            _ => unit.ToLowerInvariant() switch
            {
                "" or "deg" or "°" or "degree" or "degrees" => (1, "degrees", false),
                "rad" or "radian" or "radians" => (180 / Math.PI, "radians", false),
                _ => null,
            },
        };

    private static (double, string, bool)? Of(QuantityKind kind, string unit, string usual)
    {
        string told = unit.Length > 0 ? unit : usual;
        return UnitTable.Find(kind, told) is { } found ? (found.ToSi(1), found.Symbol, false) : null;
    }

    private static string Units(CurveColumn column) =>
        column switch
        {
            CurveColumn.Frequency => QuantityParser.UnitsOf(QuantityKind.Frequency),
            CurveColumn.Gain => "dB, or 1 for a ratio",
            CurveColumn.Phase => "deg, rad",
            _ => QuantityParser.UnitsOf(QuantityKind.Resistance),
        };

    private static string Word(CurveColumn column) =>
        column switch
        {
            CurveColumn.Real => "real part",
            CurveColumn.Imaginary => "imaginary part",
            _ => column.ToString().ToLowerInvariant(),
        };

    /// <summary>"gain [dB]", "gain (dB)", "gain_dB", or the name alone.</summary>
    [GeneratedRegex(
        @"^\s*(?<name>[^\[\(_]*?)\s*(?:[\[\(]\s*(?<unit>[^\]\)]*?)\s*[\]\)]|_(?<unit>[^\s\[\(]+))?\s*$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Heading();
}
