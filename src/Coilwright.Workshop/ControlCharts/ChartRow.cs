namespace Coilwright.Workshop.ControlCharts;

/// <summary>One stored reading on its way to a chart.</summary>
/// <param name="Order">Place in the order of entry.</param>
/// <param name="Id">Its id.</param>
/// <param name="Tag">The coil's tag.</param>
/// <param name="Si">Value in SI; null when it was not understood or the coil is open.</param>
/// <param name="TemperatureC">Temperature, °C.</param>
/// <param name="AtHz">Frequency, Hz.</param>
/// <param name="Person">Who read it.</param>
/// <param name="TimeUtc">When.</param>
/// <param name="Supersedes">The reading it takes the place of.</param>
/// <param name="Withdraws">True for an undo.</param>
public readonly record struct ChartRow(
    long Order,
    Guid Id,
    string Tag,
    double? Si,
    double? TemperatureC,
    double? AtHz,
    string Person,
    DateTimeOffset TimeUtc,
    Guid? Supersedes,
    bool Withdraws
);
