namespace Coilwright.Workshop.ControlCharts;

/// <summary>One chart: a value for each point, with its middle and its limits.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Values">Its points; the second set is null except for sums to both sides.</param>
/// <param name="Second">The second set, drawn downwards.</param>
/// <param name="Centre">Middle line.</param>
/// <param name="Low">Lower limit of each point.</param>
/// <param name="High">Upper limit of each point.</param>
/// <param name="Places">Place of each point among the drawn coils.</param>
/// <param name="InSigma">True when the values are in sigma and not in the quantity's unit.</param>
public sealed record ChartSeries(
    string Name,
    IReadOnlyList<double> Values,
    IReadOnlyList<double>? Second,
    double Centre,
    IReadOnlyList<double> Low,
    IReadOnlyList<double> High,
    IReadOnlyList<int> Places,
    bool InSigma = false
);
