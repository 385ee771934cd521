using Coilwright.Bench;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Forms;

/// <summary>What a keyboard-wedge meter typed into the field for ohms.</summary>
internal static class MeterEntryParser
{
    /// <summary>The text as it is when a person could have meant it; else the first value of a meter's line, or "open".</summary>
    public static string Of(string typed) =>
        QuantityParser.IsOpen(typed) || QuantityParser.TryParse(typed, QuantityKind.Resistance, unitRequired: false, out _, out _)
            ? typed
            : MeterLine.AsTyped(typed);
}
