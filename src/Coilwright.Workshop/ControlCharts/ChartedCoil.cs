namespace Coilwright.Workshop.ControlCharts;

/// <summary>One coil on the wall.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Value">What is charted, SI; a resistance at 20 °C.</param>
/// <param name="Batch">Name of its batch, or empty.</param>
/// <param name="Person">Who read it.</param>
/// <param name="TimeUtc">When; null when nobody said.</param>
public sealed record ChartedCoil(string Tag, double Value, string Batch = "", string Person = "", DateTimeOffset? TimeUtc = null)
{
    /// <summary>False when a resistance was read at a temperature that nobody wrote down.</summary>
    public bool TemperatureKnown { get; init; } = true;

    /// <summary>True when it was rejected or its value is in doubt: it is known already, and neither moves limits nor signals.</summary>
    public bool LeftOut { get; init; }
}
