using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;

namespace Coilwright.Analysis.Spread;

/// <summary>Holds the run's inductance against full field solutions at the edge of the draw.</summary>
internal static class FieldModelCheck
{
    private static readonly double[] s_edges = [-Estimate.Sigmas95, Estimate.Sigmas95];

    /// <summary>Largest relative difference, with turns, wire and packing at both ends of their intervals together.</summary>
    public static double LargestError(
        PickupModel model,
        ForecastScene scene,
        ForecastInputs places,
        IReadOnlyList<UncertainInput> inputs,
        CancellationToken cancel
    )
    {
        ForecastVector vector = new(scene, places, null);
        double[] x = new double[inputs.Count],
            y = new double[vector.Count];
        double worst = 0;
        foreach (double edge in s_edges)
        {
            for (int i = 0; i < x.Length; i++)
            {
                // A thick film and a loose lay both make the build larger.
                double deviations = inputs[i].Cause switch
                {
                    "turns" or "overallDiameter" => edge,
                    "packing" => -edge,
                    _ => 0,
                };
                x[i] = inputs[i].Estimate.IsExact ? inputs[i].Estimate.Value : inputs[i].ValueAt(deviations);
            }

            vector.Evaluate(x, y);
            PickupModel there = model with
            {
                Coils =
                [
                    .. model.Coils.Select(
                        (coil, c) =>
                            coil with
                            {
                                Winding = coil.Winding with
                                {
                                    Turns = vector.TurnsOf(c, x),
                                    MeasuredBuildM = y[vector.PlaceOf(c, CoilResult.Build)],
                                },
                            }
                    ),
                ],
            };
            ForecastScene full = new(there, new ForecastOptions { JigM = null }, cancel);
            ForecastVector fullVector = new(full, new ForecastInputs(there, full), null);
            double[] fullY = new double[fullVector.Count];
            fullVector.Evaluate([.. new ForecastInputs(there, full).All.Select(input => input.Estimate.Value)], fullY);
            double here = y[vector.PlaceOf(PickupResult.Inductance)],
                truth = fullY[fullVector.PlaceOf(PickupResult.Inductance)];
            worst = Math.Max(worst, Math.Abs(here / truth - 1));
        }

        return worst;
    }
}
