using System.Globalization;
using Coilwright.Formats.Csv;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>Values of an export as texts, and back: one way to write each, so that two exports of equal shops are equal.</summary>
public static class ExportCells
{
    /// <summary>With these a spreadsheet's formula begins, with white space that it takes away, and with our own mark.</summary>
    private const string Guarded = "=+-@'\t\r\n";

    private static readonly TableNumbers s_numbers = new(CommaIsDecimal: false);

    private const string Iso = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";

    /// <summary>A value as a text; empty for none.</summary>
    public static string Text(object? value) =>
        value switch
        {
            null => "",
            string text => text,
            Guid id => id.ToString(),
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            bool flag => flag ? "true" : "false",
            DateTimeOffset time => time.UtcDateTime.ToString(Iso, CultureInfo.InvariantCulture),
            _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
        };

    /// <summary>A text of a person in a table: one that a spreadsheet would run gets an apostrophe in front.</summary>
    public static string Guard(string text) => text.Length > 0 && Guarded.Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;

    /// <summary>As it was before <see cref="Guard"/>.</summary>
    public static string Unguard(string cell) => cell.StartsWith('\'') ? cell[1..] : cell;

    /// <summary>Reads a value of a column.</summary>
    /// <param name="column">The column.</param>
    /// <param name="text">The text; null for none.</param>
    /// <param name="value">The value; null for none.</param>
    /// <param name="allowed">What would be read; empty when it was.</param>
    public static bool TryRead(ExportColumn column, string? text, out object? value, out string allowed)
    {
        allowed = "";
        value = null;
        if (text is null || (text.Length == 0 && column.Kind is not (ExportKind.Text or ExportKind.Document)))
        {
            allowed = column.IsOptional ? "" : Allowed(column);
            return column.IsOptional;
        }

        value = column.Kind switch
        {
            ExportKind.Id => Guid.TryParseExact(text, "D", out Guid id) ? id : null,
            ExportKind.Number => s_numbers.TryNumber(text, out double number, out _) ? number : null,
            ExportKind.Count => s_numbers.TryNumber(text, out double count, out _)
            && double.IsInteger(count)
            && count is >= int.MinValue and <= int.MaxValue
                ? (long)count
                : null,
            ExportKind.Flag => Flag(text),
            ExportKind.Time => Time(text),
            ExportKind.Word => column.Words.Contains(text, StringComparer.Ordinal) ? text : null,
            _ => text,
        };
        allowed = value is null ? Allowed(column) : "";
        return value is not null;
    }

    /// <summary>What a column may hold, in words.</summary>
    public static string Allowed(ExportColumn column) =>
        column.Kind switch
        {
            ExportKind.Id => "an id such as 3f2504e0-4f89-41d3-9a0c-0305e82c3301",
            ExportKind.Number => "a number with a point, such as 6312.5",
            ExportKind.Count => "a whole number",
            ExportKind.Flag => "true or false",
            ExportKind.Time => "a time in UTC such as 2026-03-02T12:00:00.0000000Z",
            ExportKind.Word => string.Join(", ", column.Words),
            ExportKind.Json => "a JSON object",
            _ => "a text",
        };

    private static bool? Flag(string text) =>
        text switch
        {
            "true" => true,
            "false" => false,
            _ => null,
        };

    private static DateTimeOffset? Time(string text) =>
        text.EndsWith('Z')
        && DateTimeOffset.TryParse(
            text,
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
            out DateTimeOffset time
        )
            ? time
            : null;
}
