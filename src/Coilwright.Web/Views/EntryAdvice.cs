using Coilwright.Workshop.Readings;

namespace Coilwright.Web.Views;

/// <summary>What stands beside the verdict at entry.</summary>
public static class EntryAdvice
{
    /// <summary>The probable cause of a coil that does not pass; empty for one that does.</summary>
    public static string Cause(Verdict verdict) => verdict.Kind == VerdictKind.Pass ? "" : VerdictAdvice.Cause(verdict);

    /// <summary>What to do first about it.</summary>
    public static string Check(Verdict verdict) => verdict.Kind == VerdictKind.Pass ? "" : VerdictAdvice.Check(verdict);

    /// <summary>The warning that the run drifts, with what to do; empty when it does not.</summary>
    public static string Signal(string tag, IReadOnlyList<string> rules) =>
        rules.Count == 0 ? "" : $"The run drifts at {tag}: {string.Join("; ", rules)}. Before the next coil {VerdictAdvice.DriftChecks}.";
}
