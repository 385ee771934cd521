namespace Coilwright.Analysis.Planning;

/// <summary>A step in whole units of time.</summary>
internal sealed record ModelStep(int Job, int Place, IReadOnlyList<(int Station, long Time)> On)
{
    public string? Family { get; init; }

    public bool IsLast { get; init; }

    public long MinGap { get; init; }

    public long? MaxGap { get; init; }

    public bool IsFirst => Place == 0;

    /// <summary>Time on a station; zero when it cannot be done there.</summary>
    public long Takes(int station) => On.Where(option => option.Station == station).Select(option => option.Time).FirstOrDefault();
}
