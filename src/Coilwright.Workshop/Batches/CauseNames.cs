using Coilwright.Analysis.Diagnosis;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Batches;

/// <summary>The causes that a person may say a coil really had, by key and label.</summary>
public static class CauseNames
{
    /// <summary>Their keys; the first is that nothing was wrong.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. CauseTable.All.Where(cause => cause.CanBeConfirmed).Select(cause => cause.Key)];

    /// <summary>What they are called, for a person who has to choose one.</summary>
    public static string Allowed { get; } = string.Join(", ", Keys.Select(KeyLabels.Of));

    /// <summary>The key of a cause that was typed as itself or by its label; null where it is none.</summary>
    public static string? KeyOf(string typed)
    {
        string key = KeyLabels.KeyOf(typed, Keys);
        return Keys.Contains(key) ? key : null;
    }
}
