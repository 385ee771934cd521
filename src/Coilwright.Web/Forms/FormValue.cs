using System.Globalization;
using System.Text.Json.Nodes;

namespace Coilwright.Web.Forms;

/// <summary>How a posted field becomes a value of a document.</summary>
internal static class FormValue
{
    /// <summary>A moment as a hidden field carries it, to the tick.</summary>
    public static string Time(DateTimeOffset time) => time.UtcTicks.ToString(CultureInfo.InvariantCulture);

    /// <summary>The moment that a hidden field carried; null when it carried none.</summary>
    public static DateTimeOffset? Time(string typed) =>
        long.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out long ticks) && ticks <= DateTimeOffset.MaxValue.UtcTicks
            ? new DateTimeOffset(ticks, TimeSpan.Zero) : null;

    /// <summary>Null for an empty field, a number where the document holds one and the text is one, else the text for the reader to judge.</summary>
    public static JsonNode? NodeOf(string typed, bool isNumber)
    {
        if (typed.Length == 0)
        {
            return null;
        }

        return isNumber && double.TryParse(typed.Replace(" ", "", StringComparison.Ordinal), NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            ? JsonValue.Create(number) : JsonValue.Create(typed);
    }
}
