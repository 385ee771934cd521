using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Papers.Figures;
using Coilwright.Physics.Circuit;
using Coilwright.Web.Forms;
using Coilwright.Web.Views;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;

namespace Coilwright.Web.Forecasts;

/// <summary>One call from the compare form to everything its panel shows.</summary>
internal static class CompareService
{
    private const int MostCurves = 12;
    private static readonly double[] s_grid = PickupResponse.LogFrequencies(20, 20_000, 200);

    public static CompareViewModel Compare(CompareForm form, IReadOnlyList<RevisionRecord> recipes)
    {
        List<Problem> problems = [];
        List<RevisionRecord> chosen = Chosen(form, recipes);
        List<ComparedDesign> designs = [];
        foreach (RevisionRecord revision in chosen)
        {
            (ComparedDesign? design, IReadOnlyList<Problem> wrong) = ComparedDesign.Of(revision);
            problems.AddRange(wrong);
            designs.AddRange(design is null ? [] : [design]);
        }

        ReadOutcome<LoadCircuit> load = LoadReader.Read(form.Load.ToJsonString());
        problems.AddRange(load.Problems.Select(problem => problem with { Field = "load." + problem.Field }));
        ReadOutcome<CurveTable>? curve = form.Curve.Trim().Length > 0 ? CurveTable.Read(form.Curve) : null;
        problems.AddRange((curve?.Problems ?? []).Select(problem => problem with { Field = "measured curve, " + problem.Field }));
        if (problems.Count > 0 || load.Value is not { } shown)
        {
            return new CompareViewModel { Problems = problems };
        }

        List<string> measured = [];
        MeasuredCurve? points = curve?.Value is { } table ? Measured(table, shown, designs, measured) : null;
        (string Name, LoadCircuit Load)[] loads =
        [
            ("this load", shown),
            .. form.Bare ? [("unloaded", LoadCircuit.None)] : Array.Empty<(string, LoadCircuit)>(),
            .. UsualLoad.All.Where(one => form.Loads.Contains(one.Name)).Select(one => (one.Name, one.Load)),
        ];
        return Drawn(designs, loads, points) with { Measured = measured, RecipeDifferences = RecipeDifference.Between(chosen) };
    }

    /// <summary>Recipes side by side on one load by their bare names, the first one pinned.</summary>
    public static CompareViewModel Compare(IReadOnlyList<RevisionRecord> recipes, LoadCircuit load)
    {
        List<ComparedDesign> designs =
        [
            .. recipes.Select(recipe => ComparedDesign.Of(recipe, recipe.RecipeName).Design).OfType<ComparedDesign>(),
        ];
        return Drawn(designs, [("this load", load)], null) with { RecipeDifferences = RecipeDifference.Between(recipes) };
    }

    /// <summary>The recipes asked for, the pinned one first.</summary>
    private static List<RevisionRecord> Chosen(CompareForm form, IReadOnlyList<RevisionRecord> recipes)
    {
        Guid? pinned = form.Designs[form.Pinned] ?? form.Designs.FirstOrDefault(id => id is not null);
        return
        [
            .. form
                .Designs.Where(id => id is not null)
                .Distinct()
                .OrderByDescending(id => id == pinned)
                .Select(id => recipes.FirstOrDefault(recipe => recipe.RecipeId == id))
                .OfType<RevisionRecord>(),
        ];
    }

    /// <summary>A measured impedance joins the designs by its fit; a measured gain is drawn as it is.</summary>
    private static MeasuredCurve? Measured(CurveTable table, LoadCircuit load, List<ComparedDesign> designs, List<string> told)
    {
        told.Add(
            $"Read: {table.Curve.Count} points; {table.Delimiter} between cells, decimal {table.Decimal}; "
                + $"{string.Join("; ", table.Columns)}."
        );
        if (table.Curve.ImpedanceOhm is null)
        {
            told.Add("Its gain is drawn relative to its first point.");
            return table.Curve;
        }

        CurveFit fit = ImpedanceFit.Fit(table.Curve);
        LumpedPickup pickup = fit.Pickup;
        designs.Add(new ComparedDesign("Measured", pickup, pickup.CapacitanceF, pickup.ParallelLossOhm, null));
        Physics.Estimate henry = fit.Derived(one => one.ImpedanceOhm(1000).Imaginary / (2 * Math.PI * 1000));
        told.Add(
            $"Fitted: {ForecastNumberFormatter.Write(pickup.ResistanceOhm, "Ω")}, {ForecastNumberFormatter.Write(henry.Value, "H")} at "
                + $"1 kHz (95 %: {ForecastNumberFormatter.Interval(henry, "H")}), "
                + $"{ForecastNumberFormatter.Write(pickup.CapacitanceF, "F")}, {pickup.Eddy.Count} eddy branches. "
                + $"{(fit.Fit.Converged ? "" : "The fit did not settle: do not use it.")}"
        );
        told.AddRange(fit.Untold.Select(untold => $"The curve cannot tell apart: {string.Join(", ", untold.Names)}."));
        return null;
    }

    private static CompareViewModel Drawn(List<ComparedDesign> designs, (string Name, LoadCircuit Load)[] loads, MeasuredCurve? measured)
    {
        var curves = loads.SelectMany(load => designs.Select(design => (Design: design, load.Name, load.Load))).Take(MostCurves).ToArray();
        ResonancePeak?[] peaks = [.. curves.Select(curve => curve.Design.Peak(curve.Load))];
        double[] hz =
        [
            .. peaks.OfType<ResonancePeak>().SelectMany(peak => PickupResponse.Refined(s_grid, peak)).Concat(s_grid).Distinct().Order(),
        ];
        Response[] responses = [.. curves.Select(curve => curve.Design.Compute(curve.Load, hz))];
        string[] names = [.. curves.Select(curve => loads.Length == 1 ? curve.Design.Name : $"{curve.Design.Name}, {curve.Name}")];
        List<CurveViewModel> views =
        [
            .. curves.Select(
                (_, i) =>
                    new CurveViewModel(
                        names[i],
                        [.. responses[i].Points.Select(point => double.IsFinite(point.GainDb) ? point.GainDb : (double?)null)],
                        false
                    )
                    {
                        Stroke = i,
                    }
            ),
        ];
        if (measured is not null)
        {
            views.Add(new CurveViewModel("Measured gain", [.. hz.Select(f => At(measured, f))], true) { Stroke = views.Count });
        }

        IReadOnlyList<ComparisonLine>?[] lines = new IReadOnlyList<ComparisonLine>?[curves.Length];
        Parallel.For(0, curves.Length, k => lines[k] = CompareRows.Lines(curves[k].Design, designs[0], curves[k].Load));
        double? pinnedHz = peaks.FirstOrDefault(peak => peak is not null)?.FrequencyHz;
        return new CompareViewModel
        {
            Designs = [.. designs.Select(design => design.Name)],
            Response = views.Count == 0 ? null : new ResponseViewModel(hz, views, pinnedHz),
            Rows = [.. curves.Select((curve, i) => CompareRows.Of(names[i], curve.Design, designs[0], curve.Load, lines[i]))],
            ResultDifferences = ResultDifference.Between(designs, loads[0].Load, [.. lines.Take(designs.Count)]),
            Svg = views.Count == 0 ? "" : ResponseFigure.Svg([.. names.Zip(responses)], peaks, "Responses compared", "compare"),
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
