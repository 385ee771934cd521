using System.Globalization;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Boards;

/// <summary>A batch under way.</summary>
/// <param name="Run">As it stands.</param>
/// <param name="Spool">The spool that is on; null when none is named, or none of that label is on record.</param>
public sealed record RunningBatch(BatchProgress Run, SpoolStatus? Spool)
{
    /// <summary>"17 pass, 1 hold, 2 reject"; what there is none of is left out.</summary>
    public string VerdictWords => string.Join(", ", Enum.GetValues<VerdictKind>().Select(CountOf).Where(words => words.Length > 0));

    /// <summary>What is on its spindles, in a line; empty when nothing is.</summary>
    public string SpindleWords => string.Join("; ", Run.History.OnSpindles.Select(Words));

    /// <summary>How long its spool lasts, in a sentence; empty when no spool is named.</summary>
    public string SpoolWords
    {
        get
        {
            if (Spool is not { } spool)
            {
                return "";
            }

            return spool.CoilsLeft(Run.Plan.WireM(Run.WantedTurns)) is var (fewest, _)
                ? string.Create(CultureInfo.InvariantCulture, $"spool {spool.Spool.Label} lasts for {fewest:#,##0} coils")
                : $"spool {spool.Spool.Label} was not weighed";
        }
    }

    private string CountOf(VerdictKind kind)
    {
        int count = Run.Status.Coils.Count(coil => coil.Verdict.Kind == kind);
        return count == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{count} {kind.ToString().ToLowerInvariant()}");
    }

    private static string Words(CoilOnSpindle coil)
    {
        string at = coil.Counter is { } counter ? string.Create(CultureInfo.InvariantCulture, $" at {counter:#,##0}") : "";
        string on = coil.Machine.Length > 0 ? $" on {coil.Machine}" : "";
        return $"{coil.Tag} {coil.State.ToString().ToLowerInvariant()}{at}{on}";
    }
}
