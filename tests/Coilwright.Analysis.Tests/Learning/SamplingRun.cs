using Coilwright.Analysis.Learning;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Tests.Learning;

/// <summary>The model of <see cref="HierarchicalFit"/> with everything drawn in turn: Gibbs's sampler.</summary>
internal sealed class SamplingRun
{
    private static readonly EffectKind[] s_free = [EffectKind.Bobbin, EffectKind.Core, EffectKind.Lot, EffectKind.Spool];
    private readonly Random _random;
    private readonly List<(Dictionary<Effect, double> Effects, double Variance, Dictionary<EffectKind, double> Times)> _draws = [];

    public SamplingRun(IReadOnlyList<LearningReading> readings, LearningPriors priors, int seed, int draws)
    {
        _random = new Random(seed);
        EffectPrior[] all = [.. readings.SelectMany(one => one.Effects).DistinctBy(one => one.Effect)];
        Dictionary<Effect, int> place = all.Select((one, k) => (one.Effect, k)).ToDictionary(one => one.Effect, one => one.k);
        int[][] of = [.. readings.Select(one => one.Effects.Select(effect => place[effect.Effect]).ToArray())];
        int[][] having = [.. all.Select((_, k) => Enumerable.Range(0, of.Length).Where(i => of[i].Contains(k)).ToArray())];
        double[] value = new double[all.Length],
            left = [.. readings.Select(one => one.LogRatio)];
        bool[] bad = new bool[left.Length];
        double variance = priors.CoilDeviation * priors.CoilDeviation,
            part = priors.BadPart,
            far = priors.BadDeviation * priors.BadDeviation;
        Dictionary<EffectKind, double> times = s_free.ToDictionary(kind => kind, _ => 1.0);
        for (int draw = -draws / 10; draw < draws; draw++)
        {
            for (int i = 0; i < left.Length; i++)
            {
                double good = (1 - part) * Normal.PDF(0, Math.Sqrt(variance), left[i]),
                    off = part * Normal.PDF(0, Math.Sqrt(variance + far), left[i]);
                bad[i] = _random.NextDouble() * (good + off) < off;
            }

            for (int k = 0; k < all.Length; k++)
            {
                double precision = 1 / (all[k].Variance * times.GetValueOrDefault(all[k].Effect.Kind, 1)),
                    sum = 0;
                foreach (int i in having[k])
                {
                    double weight = 1 / (bad[i] ? variance + far : variance);
                    precision += weight;
                    sum += weight * (left[i] + value[k]);
                }

                double drawn = Normal.Sample(_random, sum / precision, 1 / Math.Sqrt(precision));
                foreach (int i in having[k])
                {
                    left[i] += value[k] - drawn;
                }

                value[k] = drawn;
            }

            int[] fine = [.. Enumerable.Range(0, left.Length).Where(i => !bad[i])];
            variance = InverseChiSquare(
                priors.Weight + fine.Length,
                priors.Weight * priors.CoilDeviation * priors.CoilDeviation + fine.Sum(i => left[i] * left[i])
            );
            part = Beta.Sample(
                _random,
                priors.BadWeight * priors.BadPart + left.Length - fine.Length,
                priors.BadWeight * (1 - priors.BadPart) + fine.Length
            );
            foreach (EffectKind kind in s_free)
            {
                int[] seen = [.. Enumerable.Range(0, all.Length).Where(k => all[k].Effect.Kind == kind)];
                times[kind] = InverseChiSquare(
                    priors.KindWeight + seen.Length,
                    priors.KindWeight + seen.Sum(k => value[k] * value[k] / all[k].Variance)
                );
            }

            if (draw >= 0)
            {
                _draws.Add(
                    (all.Select((one, k) => (one.Effect, value[k])).ToDictionary(one => one.Effect, one => one.Item2), variance, new(times))
                );
            }
        }
    }

    /// <summary>Middle and half-width of the 95 % interval of the next good coil.</summary>
    public (double Mean, double Half) Next(IReadOnlyList<EffectPrior> effects)
    {
        double[] next =
        [
            .. _draws
                .Select(draw =>
                    effects.Sum(one =>
                        draw.Effects.TryGetValue(one.Effect, out double known)
                            ? known
                            : Normal.Sample(_random, 0, Math.Sqrt(one.Variance * draw.Times.GetValueOrDefault(one.Effect.Kind, 1)))
                    ) + Normal.Sample(_random, 0, Math.Sqrt(draw.Variance))
                )
                .Order(),
        ];
        return (next.Average(), (next[(int)(0.975 * next.Length)] - next[(int)(0.025 * next.Length)]) / 2);
    }

    private double InverseChiSquare(double freedom, double squares) => squares / ChiSquared.Sample(_random, freedom);
}
