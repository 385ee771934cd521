using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Curves;
using Coilwright.Application.Comparisons;
using Coilwright.Application.Solving;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Circuit;

namespace Coilwright.Web.Views.Comparisons;

/// <summary>Designs compared, as the panel shows them.</summary>
internal static class ComparisonView
{
    /// <summary>Everything the panel shows.</summary>
    public static CompareViewModel Of(RecipeComparison found) =>
        found.Problems.Count > 0
            ? new CompareViewModel { Problems = found.Problems }
            : Drawn(found) with
            {
                Measured = [.. Measured(found)],
                RecipeDifferences = found.RecipeDifferences,
            };

    /// <summary>Pinned answers; null when nothing is pinned.</summary>
    public static PinnedViewModel? Of(PinnedComparison? found) =>
        found is null
            ? null
            : new PinnedViewModel(found.Against, found.Others, Of(found.Compared) with { ResultDifferences = [] }, found.Gone);

    /// <summary>How the measured curve was understood, and what its fit says.</summary>
    private static IEnumerable<string> Measured(RecipeComparison found)
    {
        if (found.Read is not { } table)
        {
            yield break;
        }

        yield return $"Read: {table.Curve.Count} points; {table.Delimiter} between cells, decimal {table.Decimal}; "
            + $"{string.Join("; ", table.Columns)}.";
        if (found.Fit is not { } fit)
        {
            yield return "Its gain is drawn relative to its first point.";
            yield break;
        }

        LumpedPickup pickup = fit.Pickup;
        Physics.Estimate henry = fit.Derived(one => one.ImpedanceOhm(1000).Imaginary / (2 * Math.PI * 1000));
        yield return $"Fitted: {ForecastNumberFormatter.Write(pickup.ResistanceOhm, "Ω")}, "
            + $"{ForecastNumberFormatter.Write(henry.Value, "H")} at 1 kHz (95 %: {ForecastNumberFormatter.Interval(henry, "H")}), "
            + $"{ForecastNumberFormatter.Write(pickup.CapacitanceF, "F")}, {pickup.Eddy.Count} eddy branches. "
            + $"{(fit.Fit.Converged ? "" : "The fit did not settle: do not use it.")}";
        foreach (UntoldParts untold in fit.Untold)
        {
            yield return $"The curve cannot tell apart: {string.Join(", ", untold.Names)}.";
        }
    }

    private static CompareViewModel Drawn(RecipeComparison found)
    {
        IReadOnlyList<ComparedCurve> curves = found.Curves;
        string[] names = [.. curves.Select(curve => found.Loads.Count == 1 ? curve.Design.Name : $"{curve.Design.Name}, {curve.LoadName}")];
        List<CurveViewModel> views =
        [
            .. curves.Select(
                (curve, i) =>
                    new CurveViewModel(
                        names[i],
                        [.. curve.Response.Points.Select(point => double.IsFinite(point.GainDb) ? point.GainDb : (double?)null)],
                        false
                    )
                    {
                        Stroke = i,
                    }
            ),
        ];
        if (found.MeasuredGain is { } gain)
        {
            views.Add(new CurveViewModel("Measured gain", gain, true) { Stroke = views.Count });
        }

        ResonancePeak?[] peaks = [.. curves.Select(curve => curve.Peak)];
        double? pinnedHz = peaks.FirstOrDefault(peak => peak is not null)?.FrequencyHz;
        IReadOnlyList<ComparisonLine>?[] onFirst = [.. curves.Take(found.Designs.Count).Select(curve => curve.Lines)];
        return new CompareViewModel
        {
            Sentences =
            [
                .. found
                    .Designs.Zip(onFirst)
                    .Skip(1)
                    .Where(one => one.Second is not null && found.Designs[0].Solved is not null)
                    .Select(one => CompareSentence.Of(found.Designs[0].Name, one.First.Name, one.Second!)),
            ],
            Alike = ResultDifference.Alike(onFirst),
            Figure =
                views.Count == 0
                    ? ""
                    : CompareFigure.Svg(
                        found.FrequenciesHz,
                        [.. views.Select((view, i) => new ComparedTrace(view.Name, view.GainDb, i < peaks.Length ? peaks[i] : null))]
                    ),
            Designs = [.. found.Designs.Select(design => design.Name)],
            Response = views.Count == 0 ? null : new ResponseViewModel(found.FrequenciesHz, views, pinnedHz),
            Rows = [.. curves.Select((curve, i) => CompareRows.Of(names[i], curve.Design, found.Designs[0], curve.Load, curve.Lines))],
            ResultDifferences = ResultDifference.Between(found.Designs, found.Loads[0].Load, onFirst),
            Svg =
                views.Count == 0
                    ? ""
                    : ResponseFigure.Svg([.. names.Zip(curves.Select(curve => curve.Response))], peaks, "Responses compared", "compare"),
        };
    }
}
