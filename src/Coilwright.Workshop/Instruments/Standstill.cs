namespace Coilwright.Workshop.Instruments;

/// <summary>
/// Tells when a value stands still: for as long as asked, with all of its readings near together. Tells it once; the next time only after
/// the clips were off, so that nothing is taken twice and nothing from a moving needle.
/// </summary>
/// <param name="settle">For how long.</param>
/// <param name="still">How far apart the readings may lie, a part of their size.</param>
public sealed class Standstill(TimeSpan settle, double still)
{
    private readonly Queue<(TimeSpan At, double Value)> _recent = [];
    private bool _told;

    /// <summary>Lowest and highest of what came since it last moved or was off; NaN when nothing did.</summary>
    public (double Low, double High) Range =>
        _recent.Count == 0 ? (double.NaN, double.NaN) : (_recent.Min(one => one.Value), _recent.Max(one => one.Value));

    /// <summary>True while a value that was told still hangs on.</summary>
    public bool IsTold => _told;

    /// <summary>The next reading.</summary>
    /// <param name="at">When it came, on a clock that only runs forward.</param>
    /// <param name="value">The value; null when the instrument was over range.</param>
    /// <returns>The mean of the standing readings, once; otherwise null.</returns>
    public double? Add(TimeSpan at, double? value)
    {
        if (value is not { } now || !double.IsFinite(now))
        {
            _recent.Clear();
            _told = false;
            return null;
        }

        _recent.Enqueue((at, now));
        while (_recent.Count > 1 && (!AreNear() || IsOlderThanNeeded(at)))
        {
            _recent.Dequeue();
        }

        if (_told || at - _recent.Peek().At < settle || (settle > TimeSpan.Zero && _recent.Count < 2))
        {
            return null;
        }

        _told = true;
        return _recent.Average(one => one.Value);
    }

    private bool AreNear()
    {
        (double low, double high) = Range;
        return high - low <= still * Math.Max(Math.Abs(low), Math.Abs(high));
    }

    /// <summary>The oldest may go when the next one alone reaches back far enough.</summary>
    private bool IsOlderThanNeeded(TimeSpan at) => at - _recent.ElementAt(1).At >= settle;
}
