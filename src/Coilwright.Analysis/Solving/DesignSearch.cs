using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;

namespace Coilwright.Analysis.Solving;

/// <summary>Looks at every wire, every family and every whole count of turns, so that no local optimum is sold as the answer.</summary>
/// <remarks>
/// For each family the field is solved at seven builds; for each wire every quantity is evaluated at 49 counts and read between them from a
/// cubic, which is
/// where all whole counts come from. What does not fit is kept aside: it tells whether the bobbin's room is what stands in the way.
/// </remarks>
public static class DesignSearch
{
    /// <summary>Part by which a limit is tightened in the search, against the cubic's and the interpolated field's error.</summary>
    private const double Margin = 2e-4;

    /// <summary>How far beyond the room turns are looked at, to tell what binds.</summary>
    private const double Beyond = 1.6;

    /// <summary>Searches the whole space; stopped, it answers from the families that were solved by then.</summary>
    /// <param name="space">What may be chosen, and what is wanted.</param>
    /// <param name="progress">Told the part of the space that is solved, 0 to 1.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped before any family was solved.</exception>
    public static DesignAnswer Run(DesignSpace space, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        DesignCurve[] curves = Curves(space, progress, out IReadOnlyList<string> names, out bool stopped, cancel);
        GridSearch sieve = new(space, curves, names, [.. space.Wants.Select(want => want.WithMargin(Margin))]);
        sieve.Run(stopped ? CancellationToken.None : cancel);
        return sieve.Answer() with { Stopped = stopped };
    }

    /// <summary>Quantities that a search can be asked about, with their values at the base design.</summary>
    public static IReadOnlyList<(string Name, string Unit, double Value)> QuantitiesOf(
        PickupModel family,
        Physics.Circuit.LoadCircuit? load,
        CancellationToken cancel = default
    )
    {
        ForecastScene scene = new(family, new ForecastOptions { JigM = null }, cancel);
        ForecastInputs inputs = new(family, scene);
        ForecastVector vector = new(scene, inputs, load);
        double[] y = new double[vector.Count];
        vector.Evaluate([.. inputs.All.Select(input => input.Estimate.Value)], y);
        return
        [
            .. NamedQuantity
                .CreateAll(scene, vector, load is not null)
                .Select(quantity => (quantity.Name, quantity.Unit, quantity.Read(y))),
        ];
    }

    private static DesignCurve[] Curves(
        DesignSpace space,
        IProgress<double>? progress,
        out IReadOnlyList<string> names,
        out bool stopped,
        CancellationToken cancel
    )
    {
        List<DesignCurve>?[] found = new List<DesignCurve>?[space.Families.Count];
        IReadOnlyList<string> all = [];
        int done = 0;
        stopped = !Stoppable.For(
            space.Families.Count,
            f =>
            {
                PickupModel family = space.Families[f];
                (int Fewest, int Most, int Fitting)[] ends = [.. space.Wires.Select(wire => Ends(space, family, wire))];
                // The field is solved for what fits; beyond the room it is held, which is enough to tell what binds.
                PickupModel[] designs =
                [
                    .. ends.SelectMany(
                        (end, w) =>
                            new[]
                            {
                                DesignEvaluator.With(family, space.Wires[w], end.Fewest),
                                DesignEvaluator.With(family, space.Wires[w], Math.Max(end.Fewest, end.Fitting)),
                            }
                    ),
                ];
                DesignEvaluator evaluator = new(family, space.Load, designs, cancel);
                IReadOnlyList<(string Name, string Unit, double Value)> sample = evaluator.Evaluate(designs[0]);
                string[] quantities = [.. sample.Select(quantity => quantity.Name)];
                bool[] isLevel = [.. sample.Select(quantity => quantity.Unit == "dB")];
                DesignCurve Curve(int w, int fewest, int most, bool fits) =>
                    new(f, w, fewest, most, fits, isLevel, turns =>
                        [.. evaluator.Evaluate(DesignEvaluator.With(family, space.Wires[w], turns)).Select(quantity => quantity.Value)]
                    );
                List<DesignCurve> own = [];
                for (int w = 0; w < ends.Length; w++)
                {
                    (int fewest, int most, int fitting) = ends[w];
                    if (fitting >= fewest)
                    {
                        own.Add(Curve(w, fewest, fitting, fits: true));
                    }

                    if (most > fitting)
                    {
                        own.Add(Curve(w, Math.Max(fewest, fitting + 1), most, fits: false));
                    }
                }

                lock (found)
                {
                    all = all.Count == 0 ? quantities : all;
                    found[f] = own;
                    progress?.Report((double)++done / space.Families.Count);
                }
            },
            space.Threads,
            cancel
        );
        names = all;
        return all.Count > 0
            ? [.. found.OfType<List<DesignCurve>>().SelectMany(curves => curves)]
            : throw new OperationCanceledException(cancel);
    }

    /// <summary>Fewest turns, most to look at, and the most that fit; the build rises with the turns, so halving finds it.</summary>
    private static (int Fewest, int Most, int Fitting) Ends(DesignSpace space, PickupModel family, WireChoice wire)
    {
        bool Fits(int turns) => DesignEvaluator.Fits(DesignEvaluator.With(family, wire, turns));
        if (space.MostTurns <= space.FewestTurns)
        {
            return (space.FewestTurns, space.FewestTurns, Fits(space.FewestTurns) ? space.FewestTurns : 0);
        }

        int low = space.FewestTurns - 1,
            high = space.MostTurns;
        if (Fits(high))
        {
            low = high;
        }

        while (high - low > 1)
        {
            int middle = low + (high - low) / 2;
            (low, high) = Fits(middle) ? (middle, high) : (low, middle);
        }

        int most = (int)
            Math.Clamp(Beyond * Math.Max(low, space.FewestTurns), space.FewestTurns + 8, Math.Max(space.MostTurns, space.FewestTurns + 8));
        return (space.FewestTurns, most, low);
    }
}
