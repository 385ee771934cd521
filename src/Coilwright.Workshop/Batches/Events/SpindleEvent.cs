namespace Coilwright.Workshop.Batches.Events;

/// <summary>What happened to a coil on its spindle.</summary>
public abstract record SpindleEvent : WinderEvent
{
    /// <summary>What the counter showed; null when none was noted.</summary>
    public double? Counter { get; init; }

    /// <summary>Real turns that the counter stands for on that machine, or those of the stop before; null before the first.</summary>
    public double? Turns { get; init; }

    /// <summary>How the coil stands after it.</summary>
    internal virtual SpindleState StateAfter => SpindleState.Winding;

    internal override bool IsSaidBy(BatchEventEntry said) =>
        base.IsSaidBy(said) && (said.CounterSaid is not { } counter || Counter is null || Counter == counter);
}
