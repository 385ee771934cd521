using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Instruments;

/// <summary>One line of an instrument, understood.</summary>
/// <param name="Quantity">What was measured, as in files.</param>
/// <param name="Kind">What kind of number.</param>
/// <param name="Value">The number in the unit of its kind; null when the instrument was over range.</param>
/// <param name="Raw">The line as it came, without its end.</param>
public sealed record MeterAnswer(string Quantity, QuantityKind Kind, double? Value, string Raw)
{
    /// <summary>True when the scale had no end: on resistance, an open coil, or nothing clipped on.</summary>
    public bool IsOverRange => Value is null;

    /// <summary>The unit of <see cref="Value"/>.</summary>
    public string Unit => UnitTable.Of(Kind)[0].Symbol;

    /// <summary>The value for people.</summary>
    public string Words => Value is { } value ? QuantityParser.Format(value, Kind, 6) : "over range";
}
