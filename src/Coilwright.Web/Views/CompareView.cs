using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views;

/// <summary>Designs, loads and a measured curve side by side.</summary>
public sealed record CompareView
{
    /// <summary>Every mistake in a recipe, the load or the measured curve.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    public ResponseView? Response { get; init; }

    /// <summary>Key numbers, a row each curve.</summary>
    public IReadOnlyList<CompareRow> Rows { get; init; } = [];

    /// <summary>How the measured curve was understood, and what it says; empty for none.</summary>
    public IReadOnlyList<string> Measured { get; init; } = [];

    /// <summary>Names of the designs, the pinned one first.</summary>
    public IReadOnlyList<string> Designs { get; init; } = [];

    /// <summary>What differs between the recipes: path, and the value in each design.</summary>
    public IReadOnlyList<(string Path, IReadOnlyList<string> Values)> RecipeDifferences { get; init; } = [];

    /// <summary>What differs in the results on the form's load: name, and value with change in each design.</summary>
    public IReadOnlyList<(string Name, IReadOnlyList<string> Values)> ResultDifferences { get; init; } = [];

    /// <summary>The figure as a file.</summary>
    public string Svg { get; init; } = "";
}

/// <summary>Key numbers of one curve, written with their units; a change is against the pinned design on the same load.</summary>
public sealed record CompareRow(string Curve, string PeakAt, string PeakGain, string Q, string Minus3Db, string Level, string Noise, string Change);
