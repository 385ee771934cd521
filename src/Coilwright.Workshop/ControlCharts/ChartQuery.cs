namespace Coilwright.Workshop.ControlCharts;

/// <summary>Which readings a chart wants: the last coils of some batches, or the first.</summary>
public sealed record ChartQuery
{
    /// <summary>The batches; each coil belongs to one.</summary>
    public required IReadOnlyList<Guid> Batches { get; init; }

    /// <summary>Quantity name of the file format, for example "dcResistance".</summary>
    public required string Quantity { get; init; }

    /// <summary>How many coils at most, 1 or more.</summary>
    public required int Coils { get; init; }

    /// <summary>True for the first coils, false for the last.</summary>
    public bool First { get; init; }

    /// <summary>With <see cref="First"/>: only coils entered from this place of the order on.</summary>
    public long FromOrder { get; init; }

    /// <summary>Which coils belong on the chart; all unless said.</summary>
    public Func<ChartReading, bool> Wanted { get; init; } = _ => true;
}
