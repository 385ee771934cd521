using System.Collections.Concurrent;
using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Forecasts;

/// <summary>One design of a comparison as its circuit sees it.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Branch">Its series branch.</param>
/// <param name="CapacitanceF">Capacitance across it, F.</param>
/// <param name="LossOhm">Loss resistance across it; null for none.</param>
/// <param name="Pickup">Its forecast; null for a measured one.</param>
internal sealed record ComparedDesign(string Name, ISeriesBranch Branch, double CapacitanceF, double? LossOhm, PickupForecast? Pickup)
{
    /// <summary>Forecasts kept, so that dragging a control computes responses alone.</summary>
    private const int MostKept = 60;

    private static readonly ConcurrentDictionary<string, (ForecastBranch Branch, SolvedPickup Solved)> s_kept = new(StringComparer.Ordinal);

    /// <summary>The design solved, for intervals; null for a measured one.</summary>
    public SolvedPickup? Solved { get; private init; }

    /// <summary>A recipe's design, or its problems.</summary>
    /// <param name="revision">The recipe.</param>
    /// <param name="name">What to call it; name and revision unless said.</param>
    public static (ComparedDesign? Design, IReadOnlyList<Problem> Problems) Of(RevisionRecord revision, string? name = null)
    {
        if (!s_kept.TryGetValue(revision.Json, out (ForecastBranch Branch, SolvedPickup Solved) kept))
        {
            ReadOutcome<Recipe> recipe = RecipeReader.Read(revision.Json);
            if (recipe.Value is null)
            {
                return (null, [.. recipe.Problems.Select(problem => problem with { Field = $"{revision.RecipeName}: {problem.Field}" })]);
            }

            kept = (ForecastBranch.Forecast(RecipeModelBuilder.ToModel(recipe.Value)), SolvedDesigns.Of(recipe.Value));
            if (s_kept.Count >= MostKept)
            {
                s_kept.Clear();
            }

            s_kept[revision.Json] = kept;
        }

        ForecastBranch branch = kept.Branch;
        return (
            new ComparedDesign(name ?? $"{revision.RecipeName} {revision.Letter}", branch.Branch, branch.CapacitanceF, null, branch.Pickup)
            {
                Solved = kept.Solved,
            },
            []
        );
    }

    public Response Compute(LoadCircuit load, double[] frequenciesHz) =>
        PickupResponse.Compute(Branch, CapacitanceF, LossOhm, load, frequenciesHz);

    public ResonancePeak? Peak(LoadCircuit load) => PickupResponse.FindPeak(Branch, CapacitanceF, LossOhm, load);

    public double? Fall(LoadCircuit load) => PickupResponse.FindMinus3Db(Branch, CapacitanceF, LossOhm, load);

    public double NoiseV(LoadCircuit load) => CircuitResponse.ThermalNoiseV(GuitarCircuit.FromCoil(Branch, CapacitanceF, LossOhm, load));
}
