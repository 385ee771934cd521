using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>A reading as it stands in the fields of a form.</summary>
/// <param name="Id">The reading; one that this one is to take the place of.</param>
/// <param name="Value">As typed; empty takes the reading away.</param>
/// <param name="Temperature">Of the coil; empty when nobody knows it.</param>
/// <param name="At">Frequency of an inductance or Q.</param>
/// <param name="Turns">What the counter showed; empty when it was not noted.</param>
public sealed record ReadingAsWritten(Guid Id, string Value, string Temperature, string At, string Turns)
{
    /// <summary>What a form shows of a reading in force.</summary>
    public static ReadingAsWritten Of(ReadingRecord reading) =>
        new(
            reading.Id,
            reading.Typed,
            reading.TemperatureC is { } celsius ? string.Create(CultureInfo.InvariantCulture, $"{celsius:0.##} °C") : "",
            reading.AtHz is { } hz ? QuantityParser.Format(hz, QuantityKind.Frequency) : "",
            reading.Turns is { } turns ? turns.ToString("0.##", CultureInfo.InvariantCulture) : ""
        );

    /// <summary>How a reading was understood, with what it is at 20 °C.</summary>
    public static string Describe(ReadingRecord reading) => EntryReader.Echo([reading]);

    /// <summary>The same without spaces at the ends.</summary>
    public ReadingAsWritten Trimmed => new(Id, Value.Trim(), Temperature.Trim(), At.Trim(), Turns.Trim());
}
