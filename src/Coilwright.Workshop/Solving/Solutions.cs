using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Solving;

namespace Coilwright.Workshop.Solving;

/// <summary>One whole recipe that was found.</summary>
/// <param name="Changes">What differs from the recipe asked about, by name: whole numbers as <see cref="int"/>, several coils' turns as a
/// list, the rest as text.</param>
/// <param name="RecipeJson">The recipe.</param>
/// <param name="Prediction">Its forecast, made anew in full.</param>
/// <param name="Values">Its quantities by name.</param>
/// <param name="Missed">Wants that it does not meet.</param>
public sealed record Solution(
    IReadOnlyDictionary<string, object> Changes,
    string RecipeJson,
    Prediction Prediction,
    IReadOnlyDictionary<string, double> Values,
    IReadOnlyList<string> Missed
);

/// <summary>The answer to a question asked backwards.</summary>
public sealed record Solutions
{
    /// <summary>True when at least one recipe meets every want and fits.</summary>
    public required bool Met { get; init; }

    /// <summary>Best first; the nearest when nothing meets the wants.</summary>
    public required IReadOnlyList<Solution> Ranked { get; init; }
    public required IReadOnlyList<Solution> Front { get; init; }
    public required IReadOnlyList<FrontAxis> Axes { get; init; }
    public required IReadOnlyList<Objective> Wants { get; init; }

    /// <summary>What stands in the way when nothing meets the wants.</summary>
    public required IReadOnlyList<string> Binding { get; init; }
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>When nothing meets the wants: how near the search came to each, in the order of the wants.</summary>
    public IReadOnlyList<NearestToWant> NearestEach { get; init; } = [];

    /// <summary>The quantities of the recipe asked about, by name.</summary>
    public IReadOnlyDictionary<string, double> Now { get; init; } = new Dictionary<string, double>();

    /// <summary>Designs looked at.</summary>
    public required long Searched { get; init; }

    /// <summary>True when it was stopped before everything allowed was looked at.</summary>
    public bool Stopped { get; init; }
}

/// <summary>A question asked backwards.</summary>
public sealed record SolveQuestion
{
    /// <summary>The quantities of the recipe asked about, by name.</summary>
    public IReadOnlyDictionary<string, double> Now { get; init; } = new Dictionary<string, double>();
    public required IReadOnlyList<Objective> Wants { get; init; }
    public required IReadOnlyList<Varied> Vary { get; init; }
    public required Physics.Circuit.LoadCircuit Load { get; init; }

    /// <summary>Axes of the trade-off; empty takes what is wanted most, output and the loaded peak.</summary>
    public IReadOnlyList<FrontAxis> Front { get; init; } = [];
    public int FrontSize { get; init; } = 40;
    public int Solutions { get; init; } = 8;

    /// <summary>Cores it may take at once; -1 takes all.</summary>
    public int Threads { get; init; } = -1;
}
