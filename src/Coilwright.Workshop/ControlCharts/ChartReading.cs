namespace Coilwright.Workshop.ControlCharts;

/// <summary>One coil's reading in force, as a chart takes it.</summary>
/// <param name="Order">Place in the order of entry; a corrected coil stands where it was first entered.</param>
/// <param name="BatchId">Its batch.</param>
/// <param name="Tag">Its tag.</param>
/// <param name="Si">Value in SI.</param>
/// <param name="TemperatureC">Temperature of the coil, °C; null when nobody wrote it down.</param>
/// <param name="AtHz">Frequency, Hz, of an inductance or Q.</param>
/// <param name="Person">Who read it.</param>
/// <param name="TimeUtc">When.</param>
public sealed record ChartReading(
    long Order,
    Guid BatchId,
    string Tag,
    double Si,
    double? TemperatureC,
    double? AtHz,
    string Person,
    DateTimeOffset TimeUtc
);
