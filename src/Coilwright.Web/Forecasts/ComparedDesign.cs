using System.Collections.Concurrent;
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

    private static readonly ConcurrentDictionary<string, ForecastBranch> s_kept = new(StringComparer.Ordinal);

    /// <summary>A recipe's design, or its problems.</summary>
    public static (ComparedDesign? Design, IReadOnlyList<Problem> Problems) Of(RevisionRecord revision)
    {
        if (!s_kept.TryGetValue(revision.Json, out ForecastBranch? branch))
        {
            ReadOutcome<Recipe> recipe = RecipeReader.Read(revision.Json);
            if (recipe.Value is null)
            {
                return (null, [.. recipe.Problems.Select(problem => problem with { Field = $"{revision.RecipeName}: {problem.Field}" })]);
            }

            branch = ForecastBranch.Of(RecipeModelBuilder.ToModel(recipe.Value));
            if (s_kept.Count >= MostKept)
            {
                s_kept.Clear();
            }

            s_kept[revision.Json] = branch;
        }

        return (new ComparedDesign($"{revision.RecipeName} {revision.Letter}", branch.Branch, branch.CapacitanceF, null, branch.Pickup), []);
    }

    public Response Compute(LoadCircuit load, double[] frequenciesHz) => PickupResponse.Compute(Branch, CapacitanceF, LossOhm, load, frequenciesHz);

    public ResonancePeak? Peak(LoadCircuit load) => PickupResponse.FindPeak(Branch, CapacitanceF, LossOhm, load);

    public double? Fall(LoadCircuit load) => PickupResponse.FindMinus3Db(Branch, CapacitanceF, LossOhm, load);

    public double NoiseV(LoadCircuit load) => CircuitResponse.ThermalNoiseV(GuitarCircuit.Of(Branch, CapacitanceF, LossOhm, load));
}
