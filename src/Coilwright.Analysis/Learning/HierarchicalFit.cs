namespace Coilwright.Analysis.Learning;

/// <summary>
/// Learns from coils how far measured lies from forecast: by what they have in common, with few trusting their kin and bad ones left out.
/// </summary>
/// <remarks>
/// Readings are normal about the sum of their effects, a few of them with a far wider deviation (the contaminated normal of [Tukey1960]);
/// effects are normal by kind with variances of their own [Gelman2013, chapters 5 and 15]. Variances are found by expectation and
/// maximisation [Dempster1977] with scaled inverse chi-square priors; they are put in as found, and their doubt comes back as Student's t.
/// </remarks>
public static class HierarchicalFit
{
    private const int MostPasses = 400;
    private const double Enough = 1e-7;

    /// <summary>Kinds of which a shop has enough to say how far they scatter.</summary>
    private static readonly EffectKind[] s_learnt = [EffectKind.Bobbin, EffectKind.Core, EffectKind.Lot, EffectKind.Spool];

    /// <summary>Learns from readings.</summary>
    /// <param name="readings">Readings of coils.</param>
    /// <param name="measured">Measured lengths of wire, as cells of their own.</param>
    /// <param name="priors">What holds before anything was read.</param>
    public static LearntQuantity Fit(IReadOnlyList<LearningReading> readings, IReadOnlyList<LearningCell> measured, LearningPriors priors)
    {
        State state = new(readings, measured, priors);
        for (int pass = 0; pass < MostPasses; pass++)
        {
            double before = state.Variance;
            double[] times = [.. s_learnt.Select(state.Times)];
            state.Improve();
            double moved = Math.Max(
                Math.Abs(state.Variance / before - 1),
                s_learnt.Zip(times, (kind, was) => Math.Abs(state.Times(kind) / was - 1)).Max()
            );
            if (moved < Enough)
            {
                break;
            }
        }

        return state.Result();
    }

    private sealed class State
    {
        private readonly LearningPriors _priors;
        private readonly IReadOnlyList<LearningCell> _measured;
        private readonly (IReadOnlyList<EffectPrior> Effects, double[] LogRatios)[] _groups;
        private readonly Dictionary<EffectKind, (double Times, int Effects)> _kinds = s_learnt.ToDictionary(
            kind => kind,
            _ => (Times: 1.0, Effects: 0)
        );
        private LearningCell[] _cells = [];
        private NormalHierarchy _hierarchy = new([], _ => 1);
        private double _bad;
        private double _good;

        public State(IReadOnlyList<LearningReading> readings, IReadOnlyList<LearningCell> measured, LearningPriors priors)
        {
            (_priors, _measured, _bad) = (priors, measured, priors.BadPart);
            _groups =
            [
                .. readings
                    .GroupBy(reading => string.Join('\u001f', reading.Effects.Select(one => one.Effect)), StringComparer.Ordinal)
                    .Select(group => (group.First().Effects, group.Select(reading => reading.LogRatio).ToArray())),
            ];
            double[] off = [.. _groups.SelectMany(group => Departures(group.LogRatios)).Order()];
            double scale = off.Length > 0 ? 1.4826 * off[off.Length / 2] : 0; // of a normal deviation from its median
            Variance = Math.Max(scale * scale, priors.CoilDeviation * priors.CoilDeviation / 25);
            Weigh(group => Middle(group.LogRatios));
        }

        public double Variance { get; private set; }

        public double Times(EffectKind kind) => _kinds.TryGetValue(kind, out (double Times, int Effects) known) ? known.Times : 1;

        public void Improve()
        {
            double squares = _priors.Weight * _priors.CoilDeviation * _priors.CoilDeviation,
                good = 0,
                coils = 0;
            (double Mean, double Variance)[] sums = [.. _groups.Select(group => _hierarchy.Sum(group.Effects))];
            for (int g = 0; g < _groups.Length; g++)
            {
                foreach (double ratio in _groups[g].LogRatios)
                {
                    double off = ratio - sums[g].Mean,
                        trust = GoodOf(off);
                    squares += trust * (off * off + sums[g].Variance);
                    good += trust;
                    coils++;
                }
            }

            Variance = squares / (_priors.Weight + good);
            _bad = (_priors.BadWeight * _priors.BadPart + coils - good) / (_priors.BadWeight + coils);
            foreach (EffectKind kind in s_learnt)
            {
                EffectPrior[] seen = [.. _hierarchy.Effects.Where(one => one.Effect.Kind == kind)];
                double over = seen.Sum(one => Square(_hierarchy.Sum([one])) / one.Variance);
                _kinds[kind] = ((_priors.KindWeight + over) / (_priors.KindWeight + seen.Length), seen.Length);
            }

            int place = 0;
            Weigh(_ => sums[place++].Mean);
        }

        public LearntQuantity Result() =>
            new(
                _cells,
                Variance,
                _priors.Weight + _good,
                _kinds.ToDictionary(kind => kind.Key, kind => new KindSpread(kind.Value.Times, _priors.KindWeight + kind.Value.Effects))
            );

        private void Weigh(Func<(IReadOnlyList<EffectPrior> Effects, double[] LogRatios), double> middle)
        {
            _good = 0;
            List<LearningCell> cells = [];
            foreach ((IReadOnlyList<EffectPrior> Effects, double[] LogRatios) group in _groups)
            {
                double about = middle(group),
                    precision = 0,
                    sum = 0,
                    good = 0;
                foreach (double ratio in group.LogRatios)
                {
                    double trust = GoodOf(ratio - about),
                        weight = trust / Variance + (1 - trust) / BadVariance;
                    precision += weight;
                    sum += weight * ratio;
                    good += trust;
                }

                _good += good;
                cells.Add(new LearningCell(group.Effects, precision, sum / precision, group.LogRatios.Length, good));
            }

            _cells = [.. cells, .. _measured];
            _hierarchy = new NormalHierarchy(_cells, Times);
        }

        private double BadVariance => Variance + _priors.BadDeviation * _priors.BadDeviation;

        /// <summary>Probability that a coil so far off is a good one.</summary>
        private double GoodOf(double off)
        {
            double log =
                Math.Log(_bad / (1 - _bad)) + Math.Log(Variance / BadVariance) / 2 + off * off / 2 * (1 / Variance - 1 / BadVariance);
            return 1 / (1 + Math.Exp(Math.Min(700, log)));
        }

        private static double Square((double Mean, double Variance) known) => known.Mean * known.Mean + known.Variance;

        private static IEnumerable<double> Departures(double[] ratios)
        {
            double middle = Middle(ratios);
            return ratios.Length > 1 ? ratios.Select(ratio => Math.Abs(ratio - middle)) : [];
        }

        private static double Middle(double[] values)
        {
            double[] sorted = [.. values.Order()];
            return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
        }
    }
}
