using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Views.Comparisons;

/// <summary>Designs, loads and a measured curve side by side.</summary>
public sealed record CompareViewModel
{
    /// <summary>Every mistake in a recipe, the load or the measured curve.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    public ResponseViewModel? Response { get; init; }

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

    /// <summary>Each design against the pinned one, a sentence each.</summary>
    public IReadOnlyList<string> Sentences { get; init; } = [];

    /// <summary>Results that are alike as far as the intervals tell, by name.</summary>
    public IReadOnlyList<string> Alike { get; init; } = [];

    /// <summary>The figure of the page.</summary>
    public string Figure { get; init; } = "";

    /// <summary>The figure as a file.</summary>
    public string Svg { get; init; } = "";

    /// <summary>Where the same designs are heard; empty where fewer than two are chosen.</summary>
    public string Listen { get; init; } = "";
}

/// <summary>Key numbers of one curve; the change is against the pinned design on the same load.</summary>
public sealed record CompareRow(
    string Curve,
    CompareCell PeakAt,
    CompareCell PeakGain,
    CompareCell Q,
    CompareCell Minus3Db,
    CompareCell Level,
    CompareCell Noise,
    string Change
);

/// <summary>A number written with its unit, and both ends of its 95 % interval; no interval where it was not forecast.</summary>
public sealed record CompareCell(string Value, string Interval = "");
