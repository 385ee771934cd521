using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Spread;

/// <summary>
/// Foretells how a run of one recipe scatters: wire, turns and resistance exactly for every piece, the field by its scaling laws about one
/// solution.
/// </summary>
/// <remarks>
/// Inductances go with turns squared exactly; with the build to first order through the air part, whose error against a full solution is
/// measured at the edge
/// of the draw and told. Coils wound from one spool share its diameter.
/// </remarks>
public static class RunForecaster
{
    private const int Bins = 40;

    /// <summary>Pieces of each run that are solved in full beside the drawn ones.</summary>
    private const int CheckSamples = 8;

    /// <summary>Pieces behind each remedy's figure.</summary>
    private const int RemedySamples = 2048;

    /// <summary>About what part of the work is done when the pieces are drawn, and when the causes have their shares.</summary>
    private const double DrawnDone = 0.4,
        SharesDone = 0.75;

    /// <summary>Draws a run.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="load">What hangs on it; null leaves the loaded peak out.</param>
    /// <param name="targets">Limits by quantity name.</param>
    /// <param name="samples">Pieces, 100…1,000,000.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <param name="byTime">Wound by time instead of by count.</param>
    /// <param name="progress">Told the part of the work that is done, 0 to 1.</param>
    /// <param name="cancel">Stops it; it answers from the pieces drawn by then.</param>
    public static RunSpread Spread(
        PickupModel model,
        LoadCircuit? load,
        IReadOnlyDictionary<string, SpreadTarget> targets,
        int samples,
        int seed,
        bool byTime = false,
        IProgress<double>? progress = null,
        CancellationToken cancel = default
    )
    {
        Work work = new(model, load, targets, seed, cancel);
        IReadOnlyList<UncertainInput> whole = [.. work.Inputs.All.Select(input => RunInputs.OfRun(input, byTime))];
        IReadOnlyList<UncertainInput> inputs = work.Part(whole);
        string[] causes = [.. inputs.Where(input => !input.Estimate.IsExact).Select(input => input.Cause).Distinct(StringComparer.Ordinal)];
        double[][] drawn = work.DrawUntilStopped(inputs, samples, progress);
        try
        {
            SensitivityIndex[][] shares = work.Shares(
                inputs,
                causes,
                Math.Clamp((int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)samples) / 4, 64, 4096)
            );
            progress?.Report(SharesDone);
            QuantitySpread[] spreads = Summaries(work, drawn, causes, shares);
            int few = Math.Min(samples, RemedySamples);
            Work plain = work.WithoutLearning();
            SpreadRemedy[] remedies =
            [
                .. RunInputs
                    .RemediesFor(inputs, byTime)
                    .Select(remedy => work.Try(remedy.Key, remedy.Words, [.. inputs.Select(remedy.Change)], few)),
            ];
            return new RunSpread(samples, seed, spreads, remedies, plain.LargestError(byTime))
            {
                FieldCheck = plain.Check(CheckSamples),
                OutsideAny = work.OutsideAny(drawn),
            };
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested && drawn.Length > 1)
        {
            // The shares are left open: NaN says that a cause was not worked out.
            SensitivityIndex[][] none =
            [
                .. work.Quantities.Select(_ =>
                    Enumerable.Repeat(new SensitivityIndex(double.NaN, double.NaN), causes.Length + 1).ToArray()
                ),
            ];
            return new RunSpread(drawn.Length, seed, Summaries(work, drawn, causes, none), [], double.NaN)
            {
                Stopped = true,
                OutsideAny = work.OutsideAny(drawn),
            };
        }
    }

    private static QuantitySpread[] Summaries(Work work, double[][] drawn, string[] causes, SensitivityIndex[][] shares) =>
        [.. work.Quantities.Select((quantity, q) => Summary(work, quantity, [.. drawn.Select(outcome => outcome[q])], causes, shares[q]))];

    /// <summary>Holds the run's model about one field solution against full solutions at seeded samples of the draw.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="samples">Pieces solved in full, 1…1,000.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <param name="cancel">Stops it.</param>
    public static FieldCheck CheckField(PickupModel model, int samples, int seed, CancellationToken cancel = default) =>
        new Work(model, null, new Dictionary<string, SpreadTarget>(), seed, cancel).Check(samples);

    private static QuantitySpread Summary(Work work, NamedQuantity quantity, double[] all, string[] causes, SensitivityIndex[] shares)
    {
        double[] values = [.. all.Where(double.IsFinite).Order()];
        SpreadTarget? target = work.Targets.GetValueOrDefault(quantity.Name);
        (double mean, double deviation) = Moments(values);
        int common = causes.Length;
        double low = values.Length > 0 ? values[0] : 0,
            high = values.Length > 0 ? values[^1] : 0;
        return new QuantitySpread
        {
            Name = quantity.Name,
            Unit = quantity.Unit,
            Mean = mean,
            StandardDeviation = deviation,
            Low = Quantile(values, 0.025),
            High = Quantile(values, 0.975),
            WithinRun = deviation * Math.Sqrt(shares[common].Total),
            Target = target,
            OutsideTarget = target is null ? null : Outside(all, target),
            Missing = 1 - (double)values.Length / all.Length,
            Causes =
            [
                .. causes
                    .Select((cause, i) => new SpreadCause(cause, shares[i].FirstOrder, shares[i].Total))
                    .Where(cause => cause.Total > 5e-4)
                    .OrderByDescending(cause => cause.Total),
            ],
            Histogram = Counts(values, low, high),
            HistogramLow = low,
            HistogramHigh = high,
        };
    }

    private static (double Mean, double Deviation) Moments(double[] values)
    {
        if (values.Length < 2)
        {
            return (values.Length == 1 ? values[0] : 0, 0);
        }

        double mean = values.Average();
        return (mean, Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1)));
    }

    /// <summary>A piece without the wanted peak has missed its target too.</summary>
    private static double Outside(double[] values, SpreadTarget target) =>
        (double)values.Count(value => !(value >= target.Low && value <= target.High)) / values.Length;

    private static double Quantile(double[] sorted, double fraction)
    {
        if (sorted.Length == 0)
        {
            return 0;
        }

        double place = fraction * (sorted.Length - 1);
        int below = (int)place;
        return below + 1 < sorted.Length ? sorted[below] + (place - below) * (sorted[below + 1] - sorted[below]) : sorted[below];
    }

    private static int[] Counts(double[] values, double low, double high)
    {
        int[] counts = new int[Bins];
        foreach (double value in values)
        {
            counts[high > low ? Math.Min(Bins - 1, (int)((value - low) / (high - low) * Bins)) : 0]++;
        }

        return counts;
    }

    /// <summary>One scene, solved once, and everything drawn about it.</summary>
    private sealed class Work
    {
        private readonly PickupModel _model;
        private readonly LoadCircuit? _load;
        private readonly int _seed;
        private readonly CancellationToken _cancel;
        private int[] _places = [];

        public Work(
            PickupModel model,
            LoadCircuit? load,
            IReadOnlyDictionary<string, SpreadTarget> targets,
            int seed,
            CancellationToken cancel
        )
        {
            (_model, _load, Targets, _seed, _cancel) = (model, load, targets, seed, cancel);
            Scene = new ForecastScene(model, new ForecastOptions { JigM = null }, cancel);
            Inputs = new ForecastInputs(model, Scene);
            Quantities = NamedQuantity.CreateAll(Scene, new ForecastVector(Scene, Inputs, load), load is not null);
        }

        public ForecastScene Scene { get; }
        public ForecastInputs Inputs { get; }
        public IReadOnlyList<NamedQuantity> Quantities { get; }
        public IReadOnlyDictionary<string, SpreadTarget> Targets { get; }

        /// <summary>The inputs as they are drawn; from now on every draw is of such a list.</summary>
        public IReadOnlyList<UncertainInput> Part(IReadOnlyList<UncertainInput> whole)
        {
            (UncertainInput Input, int Place)[] parted = [.. RunInputs.Parted(whole)];
            _places = [.. parted.Select(one => one.Place)];
            return [.. parted.Select(one => one.Input)];
        }

        /// <summary>The same run by the plain forecast, by which the field's model is checked: what was learnt is no field.</summary>
        public Work WithoutLearning() =>
            _model.Coils.All(coil => coil.Learnt is null)
                ? this
                : new Work(
                    _model with
                    {
                        Coils = [.. _model.Coils.Select(coil => coil with { Learnt = null })],
                    },
                    _load,
                    Targets,
                    _seed,
                    _cancel
                );

        /// <summary>Largest relative difference of the inductance against full solutions at the edge of the draw.</summary>
        public double LargestError(bool byTime) =>
            FieldModelCheck.LargestError(_model, Scene, Inputs, [.. Inputs.All.Select(input => RunInputs.OfRun(input, byTime))], _cancel);

        public FieldCheck Check(int samples) =>
            new SampledFieldCheck(_model, Scene, Inputs, [.. Inputs.All.Select(input => RunInputs.OfRun(input, byTime: false))]).Run(
                samples,
                _seed,
                _cancel
            );

        public double[][] Draw(IReadOnlyList<UncertainInput> inputs, int samples, int seedStep)
        {
            SobolSequence sequence = new(inputs.Count, unchecked(_seed + 7919 * seedStep));
            return SampledRuns.Run(samples, inputs.Count, Quantities.Count, sequence.At, () => Model(inputs), _cancel);
        }

        /// <summary>As many pieces of the run as were drawn when it was stopped: a part of the sequence is a sample too.</summary>
        public double[][] DrawUntilStopped(IReadOnlyList<UncertainInput> inputs, int samples, IProgress<double>? progress)
        {
            const int Block = 2048;
            SobolSequence sequence = new(inputs.Count, _seed);
            List<double[]> drawn = [];
            try
            {
                for (int from = 0; from < samples; from += Block)
                {
                    int start = from;
                    drawn.AddRange(
                        SampledRuns.Run(
                            Math.Min(Block, samples - from),
                            inputs.Count,
                            Quantities.Count,
                            (k, i) => sequence.At(start + k, i),
                            () => Model(inputs),
                            _cancel
                        )
                    );
                    progress?.Report(DrawnDone * drawn.Count / samples);
                }
            }
            catch (OperationCanceledException) when (_cancel.IsCancellationRequested && drawn.Count > 1)
            {
                return [.. drawn]; // those are told; the causes are not begun, since the same token stops them
            }

            return [.. drawn];
        }

        /// <summary>Shares of each kind of cause, and behind them that of all causes that differ from piece to piece.</summary>
        public SensitivityIndex[][] Shares(IReadOnlyList<UncertainInput> inputs, string[] causes, int points)
        {
            int[] groupOf = [.. inputs.Select(input => Math.Max(0, Array.IndexOf(causes, input.Cause)))];
            int[] pieceOrRun = [.. inputs.Select(input => input.IsCommon ? 1 : 0)];
            SensitivityIndex[][] byCause = SensitivityIndices.Estimate(
                inputs.Count,
                groupOf,
                Quantities.Count,
                points,
                _seed,
                () => Model(inputs),
                _cancel
            );
            SensitivityIndex[][] byScope = SensitivityIndices.Estimate(
                inputs.Count,
                pieceOrRun,
                Quantities.Count,
                points / 2,
                _seed,
                () => Model(inputs),
                _cancel
            );
            return
            [
                .. byCause.Select(
                    (shares, q) =>
                        (SensitivityIndex[])
                            [.. shares, .. Enumerable.Repeat(default(SensitivityIndex), causes.Length - shares.Length), byScope[q][0]]
                ),
            ];
        }

        /// <summary>Part of the pieces outside one or another target; null without targets.</summary>
        public double? OutsideAny(double[][] drawn)
        {
            (int Place, SpreadTarget Target)[] held =
            [
                .. Quantities.Index().Where(one => Targets.ContainsKey(one.Item.Name)).Select(one => (one.Index, Targets[one.Item.Name])),
            ];
            return held.Length == 0
                ? null
                : (double)
                    drawn.Count(piece => held.Any(one => !(piece[one.Place] >= one.Target.Low && piece[one.Place] <= one.Target.High)))
                    / drawn.Length;
        }

        public SpreadRemedy Try(string key, string words, IReadOnlyList<UncertainInput> inputs, int samples)
        {
            double[][] drawn = Draw(inputs, samples, 1);
            Dictionary<string, double> deviations = [],
                outside = [];
            for (int q = 0; q < Quantities.Count; q++)
            {
                double[] all = [.. drawn.Select(outcome => outcome[q])];
                deviations[Quantities[q].Name] = Moments([.. all.Where(double.IsFinite)]).Deviation;
                if (Targets.TryGetValue(Quantities[q].Name, out SpreadTarget? target))
                {
                    outside[Quantities[q].Name] = Outside(all, target);
                }
            }

            return new SpreadRemedy(key, words, deviations, outside) { OutsideAny = OutsideAny(drawn) };
        }

        private Action<double[], double[]> Model(IReadOnlyList<UncertainInput> inputs)
        {
            ForecastVector vector = new(Scene, Inputs, _load);
            double[] middle = [.. Inputs.All.Select(input => input.Estimate.Value)],
                x = new double[middle.Length],
                y = new double[vector.Count];
            vector.FollowPeaks(middle);
            return (unit, outcome) =>
            {
                middle.CopyTo(x, 0);
                for (int i = 0; i < inputs.Count; i++)
                {
                    UncertainInput input = inputs[i];
                    x[_places[i]] += input.Estimate.IsExact ? 0 : input.ValueAt(Normal.InvCDF(0, 1, unit[i])) - input.Estimate.Value;
                }

                vector.Evaluate(x, y);
                for (int q = 0; q < outcome.Length; q++)
                {
                    outcome[q] = Quantities[q].Read(y);
                }
            };
        }
    }
}
