namespace Coilwright.Analysis.Planning;

/// <summary>When a station is open, in the plan's units.</summary>
/// <param name="openings">Beginning, end and period of each opening; null when always open.</param>
internal sealed class Calendar((long From, long To, long? Every)[]? openings)
{
    public bool IsAlwaysOpen => openings is null;

    /// <summary>The earliest start from a time on, so that set-up and step lie in one opening; null when there is none.</summary>
    public long? Next(long from, long setUp, long time) =>
        openings is null ? Math.Max(from, setUp) : openings.Min(opening => NextIn(opening, from, setUp, time));

    /// <summary>The starts that a horizon allows.</summary>
    public IEnumerable<long[]> Starts(long horizon, long setUp, long time)
    {
        foreach ((long from, long to, long? every) in openings ?? [(0, horizon, null)])
        {
            for (long shift = 0; from + shift <= horizon; shift += every ?? horizon + 1)
            {
                if (from + setUp <= to - time)
                {
                    yield return [from + setUp + shift, to - time + shift];
                }
            }
        }
    }

    /// <summary>How long it is open between two times; openings that overlap count twice, so that it is never too little.</summary>
    public long OpenTime(long from, long to) =>
        openings is null ? to - from : openings.Sum(opening => Until(opening, to) - Until(opening, from));

    private static long Until((long From, long To, long? Every) opening, long time)
    {
        long length = opening.To - opening.From,
            since = Math.Max(0, time - opening.From);
        return opening.Every is { } every ? (since / every * length) + Math.Min(since % every, length) : Math.Min(since, length);
    }

    private static long? NextIn((long From, long To, long? Every) opening, long from, long setUp, long time)
    {
        if (opening.From + setUp > opening.To - time)
        {
            return null;
        }

        long late = Math.Max(0, from - (opening.To - time)); // how far it lies behind the last start of the first opening
        long shift = opening.Every is { } every ? (late + every - 1) / every * every : 0;
        return late > shift ? null : Math.Max(from, opening.From + setUp + shift);
    }
}
