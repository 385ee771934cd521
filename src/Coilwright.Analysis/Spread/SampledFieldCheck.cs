using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Sizes;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Spread;

/// <summary>Solves seeded samples of a run in full and holds the run's model about one solution against them.</summary>
/// <remarks>
/// Turns, wire, lay, magnets, clearance and the parts' lengths move; what the field model itself leaves open (cores, film, string
/// steel) is an interval laid on both alike and stays at its middle, and so do stretch and temperature, which no field feels.
/// </remarks>
internal sealed class SampledFieldCheck(PickupModel model, ForecastScene scene, ForecastInputs places, IReadOnlyList<UncertainInput> inputs)
{
    private static readonly string[] s_moving =
    [
        "turns",
        "bareDiameter",
        "overallDiameter",
        "resistancePerLength",
        "packing",
        "polarisation",
        "clearance",
        "bobbinSizes",
        "poleSizes",
        "magnetSizes",
        "metalworkSizes",
    ];
    private static readonly string[] s_told =
    [
        QuantityKey.DcResistance,
        QuantityKey.Inductance,
        QuantityKey.Hum,
        QuantityKey.Output,
        QuantityKey.Coupling,
    ];

    /// <summary>A hum that cancels to less than this part of the coils' own has no relative error.</summary>
    private const double Cancelled = 0.02;

    /// <summary>Differences over so many samples, on all cores; the outcome does not depend on how many there are.</summary>
    public FieldCheck Run(int samples, int seed, CancellationToken cancel)
    {
        SobolSequence sequence = new(inputs.Count, seed);
        Dictionary<string, double>[] errors = new Dictionary<string, double>[samples];
        Parallel.For(0, samples, new ParallelOptions { CancellationToken = cancel }, k =>
            errors[k] = At(i => Normal.InvCDF(0, 1, sequence.At(k, i)), cancel)
        );
        return new FieldCheck(
            samples,
            [
                .. s_told
                    .Where(name => errors.Any(one => one.ContainsKey(name)))
                    .Select(name =>
                    {
                        double[] all = [.. errors.Where(one => one.ContainsKey(name)).Select(one => one[name])];
                        return new FieldCheckLine(name, all.Max(Math.Abs), Math.Sqrt(all.Average(error => error * error)));
                    }),
            ]
        );
    }

    private Dictionary<string, double> At(Func<int, double> deviations, CancellationToken cancel)
    {
        double[] x = [.. inputs.Select((input, i) => s_moving.Contains(input.Cause) ? input.ValueAt(deviations(i)) : input.Estimate.Value)];
        ForecastVector vector = new(scene, places, null) { SearchPeaks = false };
        double[] y = new double[vector.Count];
        vector.Evaluate(x, y);

        PickupModel there = Drawn(x, y, vector);
        ForecastScene full = new(there, new ForecastOptions(), cancel);
        ForecastInputs fullInputs = new(there, full);
        ForecastVector fullVector = new(full, fullInputs, null) { SearchPeaks = false };
        double[] fullY = new double[fullVector.Count];
        fullVector.Evaluate([.. fullInputs.All.Select(input => input.Estimate.Value)], fullY);

        Dictionary<string, double> errors = [];
        foreach (
            (NamedQuantity here, NamedQuantity truth) in NamedQuantity
                .CreateAll(scene, vector, false)
                .Zip(NamedQuantity.CreateAll(full, fullVector, false))
                .Where(pair => s_told.Contains(pair.First.Name))
        )
        {
            bool cancels = here.Name == "hum" && Math.Abs(fullY[fullVector.PlaceOf(PickupResult.HumBalance)]) < Cancelled;
            if (!cancels)
            {
                errors[here.Name] = here.Read(y) / truth.Read(fullY) - 1;
            }
        }

        return errors;
    }

    /// <summary>The pickup that was drawn, to be solved whole: its build is the one that the draw's wire and lay give.</summary>
    private PickupModel Drawn(double[] x, double[] y, ForecastVector vector)
    {
        double magnets = places.Strings is { } strings ? x[strings.Magnets] : 1;
        PickupModel sized = places.Sizes.Aggregate(model, (moved, size) =>
            SizeMoves.Move(moved, model.Sizes[size.Size], places.DepartureM(size, x))
        );
        return sized with
        {
            Coils =
            [
                .. sized.Coils.Select(
                    (coil, c) => Drawn(coil, places.Coils[c], x, vector.TurnsOf(c, x), y[vector.PlaceOf(c, CoilResult.Build)], magnets)
                ),
            ],
            Bars =
            [
                .. sized.Bars.Select(bar =>
                    bar with
                    {
                        PolarisationT = new Vector3M(
                            bar.PolarisationT.XM * magnets,
                            bar.PolarisationT.YM * magnets,
                            bar.PolarisationT.ZM * magnets
                        ),
                    }
                ),
            ],
            Strings = places.Strings is { } at && sized.Strings is { } set ? set with { ClearanceM = x[at.Height] } : sized.Strings,
            Sizes = [],
        };
    }

    private static CoilModel Drawn(CoilModel coil, CoilPlaces at, double[] x, double turns, double buildM, double magnets) =>
        coil with
        {
            Wire = coil.Wire with
            {
                BareDiameterM = Estimate.Exact(x[at.Bare]),
                OverallDiameterM = Estimate.Exact(Math.Max(x[at.Overall], 1.001 * x[at.Bare])),
                MeasuredOhmPerM = at.OhmPerM >= 0 ? Estimate.Exact(x[at.OhmPerM]) : null,
            },
            Winding = coil.Winding with { Turns = turns, MeasuredBuildM = buildM },
            Poles =
            [
                .. coil.Poles.Select(pole =>
                {
                    Estimate source = pole.PolarisationT;
                    return pole with
                    {
                        PolarisationT = new Estimate(source.Value * magnets, source.Low * magnets, source.High * magnets, source.Basis),
                    };
                }),
            ],
        };
}
