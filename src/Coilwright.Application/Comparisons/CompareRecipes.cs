using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Application.Comparisons;

/// <summary>A person compares designs, loads and a measured curve.</summary>
public sealed class CompareRecipes(ComparedDesigns compared)
{
    private const int MostCurves = 12;
    private static readonly double[] s_grid = PickupResponse.LogFrequencies(20, 20_000, 200);

    /// <summary>Compares what was asked for; every mistake is listed at once.</summary>
    /// <param name="asked">The question.</param>
    /// <param name="recipes">The shop's recipes.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    public RecipeComparison Compare(CompareQuestion asked, IReadOnlyList<RevisionRecord> recipes, KnownParts parts)
    {
        List<Problem> problems = [];
        List<RevisionRecord> chosen = Chosen(asked, recipes);
        List<ComparedDesign> designs = [];
        foreach (RevisionRecord revision in chosen)
        {
            (ComparedDesign? design, IReadOnlyList<Problem> wrong) = compared.Of(revision, parts);
            problems.AddRange(wrong);
            designs.AddRange(design is null ? [] : [design]);
        }

        ReadOutcome<LoadCircuit> load = LoadReader.Read(asked.LoadJson);
        problems.AddRange(load.Problems.Select(problem => problem with { Field = "load." + problem.Field }));
        ReadOutcome<CurveTable>? curve = asked.Curve.Trim().Length > 0 ? CurveTable.Read(asked.Curve) : null;
        problems.AddRange((curve?.Problems ?? []).Select(problem => problem with { Field = "measured curve, " + problem.Field }));
        if (problems.Count > 0 || load.Value is not { } shown)
        {
            return new RecipeComparison { Problems = problems };
        }

        CurveTable? table = curve?.Value;
        CurveFit? fit = table?.Curve.ImpedanceOhm is null ? null : ImpedanceFit.Fit(table.Curve);
        if (fit is not null)
        {
            designs.Add(new ComparedDesign("Measured", fit.Pickup, fit.Pickup.CapacitanceF, fit.Pickup.ParallelLossOhm, null));
        }

        (string Name, LoadCircuit Load)[] loads =
        [
            ("this load", shown),
            .. asked.Bare ? [("unloaded", LoadCircuit.None)] : Array.Empty<(string, LoadCircuit)>(),
            .. UsualLoad.All.Where(one => asked.Loads.Contains(one.Key)).Select(one => (one.Name, one.Load)),
        ];
        return Computed(designs, loads, fit is null ? table?.Curve : null) with
        {
            Read = table,
            Fit = fit,
            RecipeDifferences = RecipeDifference.Between(chosen),
        };
    }

    /// <summary>Recipes side by side on one load by their bare names, the first one pinned.</summary>
    /// <param name="recipes">The recipes.</param>
    /// <param name="load">The load.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    public RecipeComparison Compare(IReadOnlyList<RevisionRecord> recipes, LoadCircuit load, KnownParts parts)
    {
        List<ComparedDesign> designs =
        [
            .. recipes.Select(recipe => compared.Of(recipe, parts, recipe.RecipeName).Design).OfType<ComparedDesign>(),
        ];
        return Computed(designs, [("this load", load)], null) with { RecipeDifferences = RecipeDifference.Between(recipes) };
    }

    /// <summary>The recipes asked for, the pinned one first.</summary>
    private static List<RevisionRecord> Chosen(CompareQuestion asked, IReadOnlyList<RevisionRecord> recipes)
    {
        Guid? pinned = asked.Designs[asked.Pinned] ?? asked.Designs.FirstOrDefault(id => id is not null);
        return
        [
            .. asked
                .Designs.Where(id => id is not null)
                .Distinct()
                .OrderByDescending(id => id == pinned)
                .Select(id => recipes.FirstOrDefault(recipe => recipe.RecipeId == id))
                .OfType<RevisionRecord>(),
        ];
    }

    private static RecipeComparison Computed(List<ComparedDesign> designs, (string Name, LoadCircuit Load)[] loads, MeasuredCurve? measured)
    {
        var curves = loads.SelectMany(load => designs.Select(design => (Design: design, load.Name, load.Load))).Take(MostCurves).ToArray();
        ResonancePeak?[] peaks = [.. curves.Select(curve => curve.Design.Peak(curve.Load))];
        double[] hz =
        [
            .. peaks.OfType<ResonancePeak>().SelectMany(peak => PickupResponse.Refined(s_grid, peak)).Concat(s_grid).Distinct().Order(),
        ];
        Response[] responses = [.. curves.Select(curve => curve.Design.Compute(curve.Load, hz))];
        IReadOnlyList<ComparisonLine>?[] lines = new IReadOnlyList<ComparisonLine>?[curves.Length];
        Parallel.For(0, curves.Length, k => lines[k] = curves[k].Design.Against(designs[0], curves[k].Load));
        return new RecipeComparison
        {
            Designs = designs,
            Loads = loads,
            Curves =
            [
                .. curves.Select((curve, i) => new ComparedCurve(curve.Design, curve.Name, curve.Load, peaks[i], responses[i], lines[i])),
            ],
            FrequenciesHz = hz,
            MeasuredGain = measured is null ? null : [.. hz.Select(f => At(measured, f))],
        };
    }

    /// <summary>A measured gain between its points, relative to the first; nothing outside them.</summary>
    private static double? At(MeasuredCurve curve, double hz)
    {
        double[] all = curve.FrequenciesHz;
        int next = Array.FindIndex(all, one => one >= hz);
        if (next < 0 || hz < all[0])
        {
            return null;
        }

        next = Math.Max(1, next);
        double part = Math.Log(hz / all[next - 1]) / Math.Log(all[next] / all[next - 1]);
        return curve.GainDb![next - 1] + part * (curve.GainDb[next] - curve.GainDb[next - 1]) - curve.GainDb[0];
    }
}
