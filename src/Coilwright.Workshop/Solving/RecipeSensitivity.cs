using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Solving;

/// <summary>What small changes of a recipe do to its results, each by a whole forecast with the same engine.</summary>
public static class RecipeSensitivity
{
    /// <summary>Results that are told, in this order.</summary>
    public static IReadOnlyList<string> Results { get; } =
    [
        QuantityKey.DcResistance,
        QuantityKey.Inductance,
        QuantityKey.Capacitance,
        QuantityKey.LoadedPeak,
        QuantityKey.LoadedPeakGain,
        QuantityKey.UnloadedPeak,
        QuantityKey.Output,
        QuantityKey.Fill,
        QuantityKey.WireMass,
        QuantityKey.Hum,
    ];

    /// <summary>One line for each change, also for those that cannot be made.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="load">What hangs on it; null leaves the loaded peak out.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="options">Engine; the fast one unless said.</param>
    /// <param name="cancel">Stops it.</param>
    public static IReadOnlyList<SensitivityLine> Of(
        Recipe recipe,
        LoadCircuit? load,
        KnownParts? parts = null,
        ForecastOptions? options = null,
        CancellationToken cancel = default
    )
    {
        (PickupModel model, IReadOnlyList<Perturbation> changes) = Perturbations.Of(recipe, parts ?? KnownParts.None);
        Lazy<SolvedPickup> now = new(() => new SolvedPickup(model, load, options, cancel));
        SensitivityLine[] lines = new SensitivityLine[changes.Count];
        // One core stays free: the forecast that a person drags goes before what is asked after it.
        int cores = Math.Max(1, Environment.ProcessorCount - 1);
        Parallel.For(0, lines.Length, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = cores }, k =>
            lines[k] = Line(changes[k], now, load, options, cancel)
        );
        return lines;
    }

    private static SensitivityLine Line(
        Perturbation change,
        Lazy<SolvedPickup> now,
        LoadCircuit? load,
        ForecastOptions? options,
        CancellationToken cancel
    )
    {
        if (change.Model is not { } model)
        {
            return new SensitivityLine(change.Key, change.Words, change.WhyNot, [], []);
        }

        SolvedPickup then = new(model, load, options, cancel);
        return then.Warnings.FirstOrDefault(warning => warning.MeansItDoesNotFit) is { } full
            ? new SensitivityLine(change.Key, change.Words, full.Message, [], then.Warnings)
            : new SensitivityLine(
                change.Key,
                change.Words,
                null,
                [.. PickupComparison.Between(now.Value, then, Results).OrderBy(line => Results.ToList().IndexOf(line.Name))],
                [.. then.Warnings.Where(warning => now.Value.Warnings.All(known => known.Message != warning.Message))]
            ); // what the recipe itself warns of is told beside it
    }
}
