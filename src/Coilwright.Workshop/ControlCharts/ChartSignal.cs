namespace Coilwright.Workshop.ControlCharts;

/// <summary>A signal of one of the charts.</summary>
/// <param name="Chart">Which chart.</param>
/// <param name="Index">Place among the drawn coils, from 0: the coil that completes it.</param>
/// <param name="Tag">That coil's tag.</param>
/// <param name="Rule">The rule in words.</param>
public sealed record ChartSignal(string Chart, int Index, string Tag, string Rule);
