using Coilwright.Workshop.Batches;

namespace Coilwright.Web.Views;

/// <summary>What may be told at a winder now, by the state of the batch alone.</summary>
/// <param name="Tag">The coil that it is told of; null when none is on the winder.</param>
/// <param name="Shown">Names of the events, and "counter" for the field with the counter's figures.</param>
public sealed record SpindleButtons(string? Tag, IReadOnlyList<string> Shown)
{
    /// <summary>Name of the counter's field.</summary>
    public const string Counter = "counter";

    /// <summary>What may be told of the newest coil on a winder.</summary>
    /// <param name="run">The batch.</param>
    /// <param name="machine">Name of the winder.</param>
    /// <param name="spindles">How many coils it winds at once.</param>
    public static SpindleButtons Of(BatchProgress run, string machine, int spindles)
    {
        CoilOnSpindle[] here =
        [
            .. run.History.OnSpindles.Where(coil => string.Equals(coil.Machine, machine, StringComparison.OrdinalIgnoreCase)),
        ];
        string[] begin = here.Length < spindles ? [nameof(BatchEventKind.Begun)] : [];
        return new SpindleButtons(here.LastOrDefault()?.Tag, [.. begin, .. here.Length == 0 ? [] : Of(here[^1].State)]);
    }

    private static IReadOnlyList<string> Of(SpindleState state) =>
        state switch
        {
            SpindleState.Winding => [Counter, nameof(BatchEventKind.Paused), nameof(BatchEventKind.Broken)],
            SpindleState.Paused => [Counter, nameof(BatchEventKind.Broken), nameof(BatchEventKind.Resumed)],
            SpindleState.Broken => [nameof(BatchEventKind.Spliced), nameof(BatchEventKind.FinishedLow), nameof(BatchEventKind.Scrapped)],
            _ => [],
        };
}
