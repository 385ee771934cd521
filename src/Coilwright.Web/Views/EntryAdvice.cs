using Coilwright.Workshop.Readings;

namespace Coilwright.Web.Views;

/// <summary>What stands beside the verdict at entry.</summary>
public static class EntryAdvice
{
    /// <summary>The warning that the run drifts, with what to do; empty when it does not.</summary>
    public static string Signal(string tag, IReadOnlyList<string> rules) =>
        rules.Count == 0 ? "" : $"The run drifts at {tag}: {string.Join("; ", rules)}. Before the next coil {VerdictAdvice.DriftChecks}.";
}
