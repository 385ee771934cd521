using Coilwright.Physics;

namespace Coilwright.Analysis.Solving;

/// <summary>Goes through every whole count of every curve and keeps what is asked for.</summary>
internal sealed class GridSearch(DesignSpace space, DesignCurve[] curves, IReadOnlyList<string> names, IReadOnlyList<Objective> wants)
{
    private readonly int[] _wanted = [.. wants.Select(want => Place(names, want.Quantity))];
    private readonly int[] _axes = [.. space.Front.Select(axis => Place(names, axis.Quantity))];
    private readonly List<Candidate> _feasible = [];
    private readonly double[] _nearest = [.. curves.Select(_ => double.PositiveInfinity)];
    private readonly int[] _nearestTurns = new int[curves.Length];
    private readonly double[] _leastWithout = [.. wants.Select(_ => double.PositiveInfinity)];
    private readonly NearWant[] _each = [.. wants.Select(_ => NearWant.None)];
    private double _leastBeyond = double.PositiveInfinity;
    private long _searched;

    /// <summary>
    /// A design that fits and meets every want: curve, turns of the first coil, and its sum of squared deviations from the equalities.
    /// </summary>
    private readonly record struct Candidate(int Curve, int Turns, double Deviation);

    public void Run(CancellationToken cancel)
    {
        Lock gate = new();
        Parallel.For(0, curves.Length, new ParallelOptions { CancellationToken = cancel }, k =>
        {
            Local local = Scan(k);
            lock (gate)
            {
                _feasible.AddRange(local.Feasible);
                (_nearest[k], _nearestTurns[k]) = (local.Nearest, local.NearestTurns);
                _leastBeyond = curves[k].Fits ? _leastBeyond : Math.Min(_leastBeyond, local.Nearest);
                _searched += curves[k].Most - curves[k].Fewest + 1;
                for (int w = 0; w < wants.Count && curves[k].Fits; w++)
                {
                    _leastWithout[w] = Math.Min(_leastWithout[w], local.LeastWithout[w]);
                    _each[w] = _each[w].Nearer(local.Each[w] with { Curve = k });
                }
            }
        });
        _feasible.Sort((a, b) => a.Curve != b.Curve ? a.Curve.CompareTo(b.Curve) : a.Turns.CompareTo(b.Turns));
    }

    public DesignAnswer Answer()
    {
        bool met = _feasible.Count > 0;
        IReadOnlyList<Design> solutions = met
            ? Ranked()
            :
            [
                .. Enumerable
                    .Range(0, curves.Length)
                    .Where(k => curves[k].Fits || !curves.Any(curve => curve.Fits))
                    .OrderBy(k => _nearest[k])
                    .Take(space.Solutions)
                    .Select(k => Whole(k, _nearestTurns[k], _nearest[k])),
            ];
        if (met)
        {
            return new DesignAnswer(met, solutions, FrontOf(), [], _searched);
        }

        Design? nearest = solutions.Count > 0 ? solutions[0] : null;
        return new DesignAnswer(met, solutions, [], Binding(nearest), _searched)
        {
            NearestEach = [.. _each.Select(near => near.Curve < 0 ? null : Whole(near.Curve, near.Turns, near.Total))],
        };
    }

    /// <summary>
    /// What is in the way: the wants without which a design would be found, or room on the bobbin; else all that the nearest design misses.
    /// </summary>
    private string[] Binding(Design? nearest)
    {
        List<string> binding = [.. wants.Where((_, w) => _leastWithout[w] <= 0).Select(want => want.Quantity)];
        if (_leastBeyond <= 0)
        {
            binding.Add("fill");
        }

        if (binding.Count == 0)
        {
            binding = nearest is null
                ? ["fill"]
                :
                [
                    .. wants
                        .Where(want => want.Miss(nearest.Values.GetValueOrDefault(want.Quantity, double.NaN)) > 0)
                        .Select(want => want.Quantity),
                ];
        }

        return [.. binding.Distinct(StringComparer.Ordinal)];
    }

    private Local Scan(int k)
    {
        DesignCurve curve = curves[k];
        Local local = new(wants.Count);
        double[] misses = new double[wants.Count];
        for (int turns = curve.Fewest; turns <= curve.Most; turns++)
        {
            double miss = 0,
                deviation = 0;
            for (int w = 0; w < misses.Length; w++)
            {
                double value = curve.Interpolate(_wanted[w], turns);
                misses[w] = wants[w].Miss(value);
                double off = wants[w].Deviation(value);
                (miss, deviation) = (miss + misses[w] * misses[w], deviation + off * off);
            }

            local.Note(turns, miss, misses);
            if (miss <= 0 && curve.Fits)
            {
                local.Feasible.Add(new Candidate(k, turns, deviation));
            }
        }

        return local;
    }

    /// <summary>
    /// The best count of each curve, ranked: first by what is wanted as much as possible, then by nearness and by how little changes.
    /// </summary>
    private IReadOnlyList<Design> Ranked()
    {
        int[] wished = [.. Enumerable.Range(0, wants.Count).Where(w => !wants[w].IsLimit)];
        double[][] values =
        [
            .. wished.Select(w => (double[])[.. _feasible.Select(found => curves[found.Curve].Interpolate(_wanted[w], found.Turns))]),
        ];
        Dictionary<int, (int Place, double Score)> best = [];
        (double Low, double High)[] ranges =
        [
            .. values.Select(list =>
                (list.Where(double.IsFinite).DefaultIfEmpty().Min(), list.Where(double.IsFinite).DefaultIfEmpty().Max())
            ),
        ];
        for (int place = 0; place < _feasible.Count; place++)
        {
            double score = 0.02 * _feasible[place].Deviation + 0.05 * Changes(_feasible[place].Curve) + 0.1 * Distance(_feasible[place]);
            for (int n = 0; n < wished.Length; n++)
            {
                (double low, double high) = ranges[n];
                double share = high > low ? (values[n][place] - low) / (high - low) : 0;
                score += 100 * (wants[wished[n]].Kind == ObjectiveKind.Most ? 1 - share : share);
            }

            if (!best.TryGetValue(_feasible[place].Curve, out (int Place, double Score) kept) || score < kept.Score)
            {
                best[_feasible[place].Curve] = (place, score);
            }
        }

        return
        [
            .. best
                .Values.Where(kept => double.IsFinite(kept.Score))
                .OrderBy(kept => kept.Score)
                .Take(space.Solutions)
                .Select(kept => Whole(_feasible[kept.Place].Curve, _feasible[kept.Place].Turns, 0)),
        ];
    }

    /// <summary>The base comes first in families and wires; anything else is a change.</summary>
    private int Changes(int curve) => (curves[curve].Family > 0 ? 1 : 0) + (curves[curve].Wire > 0 ? 1 : 0);

    /// <summary>
    /// How far turns and wire are from the base, as logarithms of their ratios: of equals, what the shop knows comes first.
    /// </summary>
    private double Distance(Candidate found)
    {
        CoilModel own = space.Families[0].Coils[0];
        double wire = space.Wires[curves[found.Curve].Wire].Model is { } model
            ? Math.Abs(Math.Log(model.BareDiameterM.Value / own.Wire.BareDiameterM.Value))
            : 0;
        return wire + Math.Abs(Math.Log(found.Turns / own.Winding.Turns));
    }

    private IReadOnlyList<Design> FrontOf()
    {
        if (_axes.Length < 2)
        {
            return [];
        }

        double[][] values = [.. _axes.Select(axis => new double[_feasible.Count])];
        Parallel.For(0, _axes.Length, a =>
        {
            for (int place = 0; place < _feasible.Count; place++)
            {
                double value = curves[_feasible[place].Curve].Interpolate(_axes[a], _feasible[place].Turns);
                double gain = space.Front[a].Most ? value : -value;
                values[a][place] = double.IsFinite(value) ? gain : double.NegativeInfinity;
            }
        });
        int[] complete = [.. Enumerable.Range(0, _feasible.Count).Where(place => values.All(axis => double.IsFinite(axis[place])))];
        Func<int, double>[] axes = [.. values.Select(axis => (Func<int, double>)(n => axis[complete[n]]))];
        return
        [
            .. TradeOff
                .Thin(TradeOff.Front(complete.Length, axes), axes, space.FrontSize)
                .Select(n => Whole(_feasible[complete[n]].Curve, _feasible[complete[n]].Turns, 0)),
        ];
    }

    private Design Whole(int k, int turns, double miss)
    {
        DesignCurve curve = curves[k];
        PickupModel design = DesignEvaluator.With(space.Families[curve.Family], space.Wires[curve.Wire], turns, whole: true);
        Dictionary<string, double> values = [];
        for (int q = 0; q < names.Count; q++)
        {
            double value = curve.Interpolate(q, turns);
            if (double.IsFinite(value))
            {
                values[names[q]] = value;
            }
        }

        return new Design(curve.Family, curve.Wire, [.. design.Coils.Select(coil => (int)coil.Winding.Turns)], values, miss);
    }

    private static int Place(IReadOnlyList<string> names, string name)
    {
        int place = names.ToList().IndexOf(name);
        return place >= 0 ? place : throw new ArgumentException($"No quantity is called {name}.", nameof(name));
    }

    /// <summary>The design that comes nearest to one want, and of those the one that misses the others least.</summary>
    private readonly record struct NearWant(double Miss, double Total, int Curve, int Turns)
    {
        public static readonly NearWant None = new(double.PositiveInfinity, double.PositiveInfinity, -1, 0);

        public NearWant Nearer(NearWant other) => other.Miss < Miss || (other.Miss <= Miss && other.Total < Total) ? other : this;
    }

    private sealed class Local(int wants)
    {
        public List<Candidate> Feasible { get; } = [];
        public double Nearest { get; private set; } = double.PositiveInfinity;
        public int NearestTurns { get; private set; }
        public double[] LeastWithout { get; } = [.. Enumerable.Repeat(double.PositiveInfinity, wants)];
        public NearWant[] Each { get; } = [.. Enumerable.Repeat(NearWant.None, wants)];

        public void Note(int turns, double miss, double[] misses)
        {
            if (miss < Nearest)
            {
                (Nearest, NearestTurns) = (miss, turns);
            }

            for (int w = 0; w < misses.Length; w++)
            {
                Each[w] = Each[w].Nearer(new NearWant(misses[w], miss, 0, turns));
                LeastWithout[w] = Math.Min(LeastWithout[w], miss - misses[w] * misses[w] < 1e-15 ? 0 : miss - misses[w] * misses[w]);
            }
        }
    }
}
