namespace Coilwright.Workshop.Readings;

/// <summary>A run of coils with its limits, Ω at 20 °C.</summary>
/// <param name="Centre">Mean of the coils that the limits were taken from.</param>
/// <param name="LowerLimit">Three sigma below.</param>
/// <param name="UpperLimit">Three sigma above.</param>
/// <param name="LimitsFrom">From how many first coils the limits were taken; they stay as later coils come.</param>
/// <param name="FalseAlarmEvery">Good coils between two false alarms of the rules, on average.</param>
/// <param name="Signals">Where a rule is broken: tag and rule.</param>
public sealed record RunChart(
    double Centre,
    double LowerLimit,
    double UpperLimit,
    int LimitsFrom,
    double FalseAlarmEvery,
    IReadOnlyList<(string Tag, string Rule)> Signals
)
{
    /// <summary>Coils that neither move the limits nor signal: rejected, or their resistance in doubt.</summary>
    public int LeftOut { get; init; }
}
