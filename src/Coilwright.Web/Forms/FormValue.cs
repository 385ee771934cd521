using System.Globalization;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Interpretations;

namespace Coilwright.Web.Forms;

/// <summary>How a posted field becomes a value of a document.</summary>
internal static class FormValue
{
    /// <summary>A moment as a hidden field carries it, to the tick.</summary>
    public static string Time(DateTimeOffset time) => time.UtcTicks.ToString(CultureInfo.InvariantCulture);

    /// <summary>The moment that a hidden field carried; null when it carried none.</summary>
    public static DateTimeOffset? Time(string typed) =>
        long.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out long ticks) && ticks <= DateTimeOffset.MaxValue.UtcTicks
            ? new DateTimeOffset(ticks, TimeSpan.Zero)
            : null;

    /// <summary>
    /// Null for an empty field, else its text as the document holds it: a number where one was understood, a point for a decimal comma, the
    /// text for the reader to judge otherwise.
    /// </summary>
    public static JsonNode? NodeOf(string path, string typed) => FieldInterpreter.Read(path, typed).Value;
}
