namespace Coilwright.Workshop.ControlCharts;

/// <summary>An unbroken run of signals of one rule.</summary>
/// <param name="Chart">Which chart.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="Letter">The letter that marks it.</param>
/// <param name="First">Its first signal.</param>
/// <param name="Last">Its last.</param>
/// <param name="Count">How many points signal.</param>
public sealed record SignalRun(string Chart, string Rule, string Letter, ChartSignal First, ChartSignal Last, int Count);
