namespace Coilwright.Workshop.ControlCharts;

/// <summary>How often a rule of a chart alarms for nothing.</summary>
/// <param name="Chart">Which chart.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="Every">Good points between two false alarms on average; null when not computed.</param>
/// <param name="Basis">How that number was come by.</param>
public sealed record FalseAlarmRate(string Chart, string Rule, double? Every, string Basis);
