using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;

namespace Coilwright.Formats.Csv;

/// <summary>How the numbers of one table are written: with a point; with a comma where semicolons part the columns.</summary>
/// <param name="CommaIsDecimal">True where the columns are parted by semicolons.</param>
public readonly partial record struct TableNumbers(bool CommaIsDecimal)
{
    /// <summary>Said of a comma in a table whose columns are parted by commas.</summary>
    private const string Refusal = "in a table parted by commas the point alone is the decimal sign; or part the columns with semicolons";

    public static TableNumbers Of(string text) => new(CsvCells.SeparatorOf(text) == ';');

    /// <summary>A plain, finite number.</summary>
    public bool TryNumber(string cell, out double number, out string why)
    {
        string? plain = Plain(cell, isCount: false, out why);
        number = double.NaN;
        bool read =
            plain is not null
            && double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
        if (!read && plain is not null)
        {
            why = cell.Length == 0 ? "the number is missing" : $"\"{cell}\" is not a number";
        }

        number = read ? number : double.NaN;
        return read;
    }

    /// <summary>A quantity; a bare number is in the column's unit.</summary>
    public bool TryQuantity(string cell, QuantityKind kind, string unit, out Entered entered, out string why)
    {
        entered = Entered.Unknown;
        if (
            Plain(cell, kind == QuantityKind.Turns, out why) is not { } plain
            || !QuantityParser.TryParse(plain, kind, unitRequired: false, out Entered read, out why, unit)
        )
        {
            return false;
        }

        entered = read with { Typed = cell };
        return true;
    }

    /// <summary>The cell with a point; null, with the reason, when it says two things.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="isCount">True for a count, in which a separator groups thousands.</param>
    /// <param name="why">Why not; empty otherwise.</param>
    public string? Plain(string cell, bool isCount, out string why)
    {
        why = "";
        if (isCount && Thousands().IsMatch(cell))
        {
            string whole = cell.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal);
            why = $"\"{cell}\" can mean {cell[..^4]} or {whole}; write {whole} without a separator";
            return null;
        }

        if (!cell.Contains(',', StringComparison.Ordinal))
        {
            return cell;
        }

        why = CommaIsDecimal ? "" : Refusal;
        return CommaIsDecimal ? cell.Replace(".", "", StringComparison.Ordinal).Replace(',', '.') : null;
    }

    [GeneratedRegex(@"^[1-9]\d{0,2}[.,]\d{3}$", RegexOptions.CultureInvariant)]
    private static partial Regex Thousands();
}
