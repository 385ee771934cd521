namespace Coilwright.Workshop.Backups;

/// <summary>What is wrong with a shop's file, and the cure.</summary>
/// <param name="What">What was found.</param>
/// <param name="ToDo">What to do.</param>
public sealed record ShopFinding(string What, string ToDo);

/// <summary>Whether a shop's file can be trusted; nothing in it was changed.</summary>
/// <param name="Path">The file.</param>
/// <param name="Contents">What it holds; null when that cannot be read.</param>
/// <param name="LogBytes">Length of the write-ahead log beside it, bytes; 0 for none.</param>
/// <param name="Findings">Everything that is wrong; empty for a sound file.</param>
public sealed record ShopCheck(string Path, ShopContents? Contents, long LogBytes, IReadOnlyList<ShopFinding> Findings)
{
    /// <summary>What is no fault and worth knowing.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Summaries that were held against their records.</summary>
    public int SummariesCompared { get; init; }

    /// <summary>False where pages and indexes are a server's to look after, and were not read here.</summary>
    public bool PagesRead { get; init; } = true;

    /// <summary>True when the file itself is wrong, and not only what follows from its records.</summary>
    public bool IsDamaged { get; init; }

    /// <summary>True when nothing is wrong.</summary>
    public bool IsSound => Findings.Count == 0;
}
