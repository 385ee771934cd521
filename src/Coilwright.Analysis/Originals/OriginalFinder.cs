using System.Collections.Concurrent;
using System.Globalization;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Originals;

/// <summary>Weighs what an original may be made of against what was read on it.</summary>
public static class OriginalFinder
{
    /// <summary>What could be read next, with the 95 % interval that a shop's tools give it (common practice, no source).</summary>
    private static readonly OriginalReading[] s_next =
    [
        new(OriginalQuantity.DcResistance, 1, 0.005),
        new(OriginalQuantity.Inductance, 1, 0.01, 120),
        new(OriginalQuantity.OverallDiameter, 1, 0.018),
        new(OriginalQuantity.BareDiameter, 1, 0.02),
        new(OriginalQuantity.ResistancePerLength, 1, 0.01),
        new(OriginalQuantity.Build, 1, 0.03),
        new(OriginalQuantity.WireMass, 1, 0.01),
        new(OriginalQuantity.UnloadedPeak, 1, 0.01),
    ];

    /// <summary>Share under which an explanation is not told.</summary>
    private const double Negligible = 1e-6;

    /// <summary>
    /// Log-likelihood behind the best so far from which a candidate is given up: a part in ten billion before its evidence is weighed.
    /// </summary>
    private const double Hopeless = 23;

    /// <summary>Weighs the candidates.</summary>
    /// <param name="candidates">At least one.</param>
    /// <param name="readings">At least one.</param>
    /// <param name="cancel">Stops it; it answers from what was weighed by then.</param>
    public static OriginalAnswer Explain(
        IReadOnlyList<OriginalCandidate> candidates,
        IReadOnlyList<OriginalReading> readings,
        CancellationToken cancel = default
    )
    {
        OriginalReading[] all = [.. readings],
            wanted = [.. s_next.Where(next => !readings.Any(reading => reading.Quantity == next.Quantity))];
        ConcurrentDictionary<int, CandidateFit> fits = new();
        int[] order = [.. Enumerable.Range(0, candidates.Count).OrderByDescending(i => candidates[i].Weight)];
        double best = double.NegativeInfinity;
        Lock one = new();
        bool stopped = !Stoppable.For(
            order.Length,
            place =>
            {
                int i = order[place];
                CandidateFit fit = fits[i] = CandidateFit.Fit(candidates[i], all, wanted, () => best - Hopeless, cancel);
                lock (one)
                {
                    best = Math.Max(best, -fit.ChiSquare / 2 + (double.IsFinite(fit.LogEvidence) ? 0 : double.NegativeInfinity));
                }
            },
            threads: -1,
            cancel
        );
        CandidateFit[] list =
        [
            .. Enumerable
                .Range(0, candidates.Count)
                .Select(fits.GetValueOrDefault)
                .OfType<CandidateFit>()
                .Where(fit => double.IsFinite(fit.LogEvidence)),
        ];
        if (stopped && list.Length == 0)
        {
            throw new OperationCanceledException(cancel);
        }

        double most = list.Max(fit => fit.LogEvidence + Math.Log(fit.Candidate.Weight));
        double[] weight = [.. list.Select(fit => Math.Exp(fit.LogEvidence + Math.Log(fit.Candidate.Weight) - most))];
        double total = weight.Where(one => one > Negligible * weight.Sum()).Sum(),
            least = Negligible * weight.Sum();
        Weighed[] weighed =
        [
            .. list.Select((fit, i) => (Fit: fit, Weight: weight[i]))
                .Where(one => one.Weight > least)
                .Select(one => new Weighed(one.Fit, one.Weight / total))
                .OrderByDescending(one => one.Probability),
        ];
        return new OriginalAnswer
        {
            Explanations =
            [
                .. weighed
                    .GroupBy(one => (one.Fit.Candidate.Gauge, one.Fit.Candidate.Build))
                    .Select(Explanation)
                    .OrderByDescending(one => one.Probability),
            ],
            Turns = TurnsOf(weighed),
            BareDiameterM = Mixture(weighed, fit => fit.BareM),
            OverallDiameterM = Mixture(weighed, fit => fit.OverallM),
            ByGauge = By(weighed, candidate => candidate.Gauge),
            ByBuild = By(weighed, candidate => candidate.Build),
            ByPoleMaterial = By(weighed, candidate => candidate.PoleMaterial),
            NextReadings =
            [
                .. wanted
                    .Select(
                        (reading, k) =>
                            new NextReading(
                                reading.Quantity,
                                reading.Relative,
                                Information(weighed, k, reading.Relative / Estimate.Sigmas95)
                            )
                    )
                    .OrderByDescending(next => next.InformationBits),
            ],
            Converged = weighed.All(one => one.Fit.Converged || one.Probability < 0.01),
            Stopped = stopped,
            Warnings =
            [
                .. stopped
                    ? [$"stopped: {fits.Count} of {candidates.Count} wires and poles were weighed, so the probabilities are of those alone"]
                    : Array.Empty<string>(),
                .. Warnings(weighed, all),
            ],
        };
    }

    private sealed record Weighed(CandidateFit Fit, double Probability);

    private static OriginalExplanation Explanation(IGrouping<(string Gauge, string Build), Weighed> group)
    {
        double probability = group.Sum(one => one.Probability);
        Weighed[] alone = [.. group.Select(one => one with { Probability = one.Probability / probability })];
        return new OriginalExplanation(group.Key.Gauge, group.Key.Build, probability, TurnsOf(alone), Mixture(alone, fit => fit.BareM));
    }

    private static Dictionary<string, double> By(Weighed[] weighed, Func<OriginalCandidate, string> key) =>
        weighed
            .GroupBy(one => key(one.Fit.Candidate))
            .Where(group => group.Key.Length > 0)
            .ToDictionary(group => group.Key, group => group.Sum(one => one.Probability), StringComparer.Ordinal);

    private static Estimate TurnsOf(Weighed[] weighed)
    {
        Estimate log = Mixture(weighed, fit => fit.LogTurns);
        return new Estimate(Math.Exp(log.Value), Math.Exp(log.Low), Math.Exp(log.High), Basis.Forecast);
    }

    /// <summary>Median and 95 % interval of a mixture of normal scatters.</summary>
    private static Estimate Mixture(Weighed[] weighed, Func<CandidateFit, (double Mean, double Deviation)> part)
    {
        (double Mean, double Deviation, double Share)[] parts =
        [
            .. weighed.Select(one => (part(one.Fit).Mean, Math.Max(part(one.Fit).Deviation, 1e-12), one.Probability)),
        ];
        double Quantile(double wanted)
        {
            double low = parts.Min(one => one.Mean - 9 * one.Deviation),
                high = parts.Max(one => one.Mean + 9 * one.Deviation);
            for (int step = 0; step < 100; step++)
            {
                double middle = (low + high) / 2;
                (low, high) =
                    parts.Sum(one => one.Share * Normal.CDF(one.Mean, one.Deviation, middle)) < wanted * parts.Sum(one => one.Share)
                        ? (middle, high)
                        : (low, middle);
            }

            return (low + high) / 2;
        }

        return new Estimate(Quantile(0.5), Quantile(0.025), Quantile(0.975), Basis.Forecast);
    }

    /// <summary>
    /// Bits that a reading shares with wire, film, poles and turns: entropy of what it may show, less the entropy left when those are
    /// known.
    /// </summary>
    private static double Information(Weighed[] weighed, int k, double noise)
    {
        (double Mean, double Deviation, double Share)[] parts =
        [
            .. weighed.Select(one => (one.Fit.Foretold[k].Mean, Math.Sqrt(one.Fit.Foretold[k].Variance + noise * noise), one.Probability)),
        ];
        double low = parts.Min(one => one.Mean - 6 * one.Deviation),
            high = parts.Max(one => one.Mean + 6 * one.Deviation);
        int cells = (int)Math.Clamp((high - low) / (0.1 * parts.Min(one => one.Deviation)), 200, 20_000);
        double width = (high - low) / cells,
            entropy = 0;
        for (int i = 0; i < cells; i++)
        {
            double at = low + (i + 0.5) * width,
                density = parts.Sum(one => one.Share * Normal.PDF(one.Mean, one.Deviation, at));
            entropy -= density > 0 ? width * density * Math.Log2(density) : 0;
        }

        double left = weighed.Sum(one =>
            one.Probability * 0.5 * Math.Log2(2 * Math.PI * Math.E * (one.Fit.Foretold[k].Residual + noise * noise))
        );
        return Math.Max(0, entropy - left);
    }

    private static List<string> Warnings(Weighed[] weighed, OriginalReading[] readings)
    {
        List<string> warnings = [];
        double chi = weighed[0].Fit.ChiSquare,
            limit = ChiSquared.InvCDF(readings.Length + 1, 0.997);
        if (chi > limit)
        {
            warnings.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the readings do not go together: even the likeliest wire misses them (χ² {chi:F0}, at most {limit:F0} expected); "
                        + $"check units, frequency, the bobbin's sizes, or a shorted coil"
                )
            );
        }

        if (weighed[0].Probability < 0.5)
        {
            warnings.Add("no single wire is likelier than all others together: take the next reading");
        }

        if (
            !readings.Any(reading =>
                reading.Quantity
                    is OriginalQuantity.DcResistance
                        or OriginalQuantity.Inductance
                        or OriginalQuantity.WireLength
                        or OriginalQuantity.WireMass
                        or OriginalQuantity.Build
                        or OriginalQuantity.Turns
            )
        )
        {
            warnings.Add("nothing read here counts turns: read the resistance");
        }

        return warnings;
    }
}
