using System.Globalization;
using Coilwright.Analysis.Capability;
using Coilwright.Analysis.Charts;
using Coilwright.Workshop.Readings;
using MathNet.Numerics.Distributions;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>Capability of the drawn coils against the recipe's limits.</summary>
internal sealed class ChartCapability
{
    private const int LeastForPercentiles = 1000,
        Resamples = 200;
    private readonly List<ChartCapabilityIndex> _indices = [];
    private readonly List<string> _notes = [];

    public ChartCapability(ChartSettings question, double[] values, Band? band, double sigma, SubgroupChart? groups)
    {
        if (band is not { IsTarget: true })
        {
            _notes.Add("no capability: the recipe sets no limits for this quantity");
            return;
        }

        double? low = question.Sides == SpecificationSides.UpperOnly ? null : band.Low,
            high = question.Sides == SpecificationSides.LowerOnly ? null : band.High;
        _notes.Add("rejected coils are left out, so that capability is told of what was let through");
        switch (question.Shape)
        {
            case DistributionModel.Normal:
                Normal(values, low, high, sigma, groups);
                break;
            case DistributionModel.LogNormal:
                Percentiles(values, low, high, LogNormalPercentiles, "log-normal percentiles");
                break;
            default:
                Empirical(values, low, high);
                break;
        }
    }

    public IReadOnlyList<ChartCapabilityIndex> Indices => _indices;
    public IReadOnlyList<string> Notes => _notes;

    private void Normal(double[] values, double? low, double? high, double sigma, SubgroupChart? groups)
    {
        double mean = values.Average();
        CapabilityStudy? within = groups is null
            ? CapabilityStudy.OfMovingRange(values.Length, mean, IndividualsChart.Fit(values, values.Length)!.Sigma, low, high)
            : CapabilityStudy.OfSubgroups(values.Length / groups.Size, groups.Size, mean, groups.Sigma, low, high);
        Add("Cp", "Cpk", within, groups is null ? "sigma from the moving range of the drawn coils" : "sigma within subgroups");
        Add("Pp", "Ppk", CapabilityStudy.Overall(values, low, high), "standard deviation of all drawn coils");
        if (NormalityTest.Compute(values) is { LooksNormal: false } test)
        {
            _notes.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"these values do not look normal (Anderson–Darling {test.Statistic:0.00}, above {NormalityTest.Critical:0.000}): "
                        + $"choose another shape below, or look for a mixture of spools or people first"
                )
            );
        }
    }

    private void Add(string potential, string actual, CapabilityStudy? study, string basis)
    {
        if (study?.Potential() is { } index)
        {
            _indices.Add(new ChartCapabilityIndex(potential, index, basis));
        }

        if (study is not null)
        {
            _indices.Add(new ChartCapabilityIndex(actual, study.Actual(), basis));
        }
    }

    private void Empirical(double[] values, double? low, double? high)
    {
        if (values.Length < LeastForPercentiles)
        {
            _notes.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"no capability from the values' own percentiles: the 0.135 % point needs {LeastForPercentiles:#,##0} coils, "
                        + $"{values.Length:#,##0} are drawn"
                )
            );
            return;
        }

        Percentiles(values, low, high, OwnPercentiles, "the values' own percentiles");
    }

    /// <summary>Indices by percentiles; intervals from resampling the values, always with the same draws.</summary>
    private void Percentiles(double[] values, double? low, double? high, Func<double[], PercentileCapability?> of, string basis)
    {
        if (of(values) is not { } study)
        {
            _notes.Add("no capability: the values are all the same");
            return;
        }

        Random random = new(1);
        double[] potential = new double[Resamples],
            actual = new double[Resamples],
            drawn = new double[values.Length];
        for (int n = 0; n < Resamples; n++)
        {
            for (int i = 0; i < drawn.Length; i++)
            {
                drawn[i] = values[random.Next(values.Length)];
            }

            PercentileCapability one = of(drawn) ?? study;
            potential[n] = low is { } l && high is { } h ? one.Potential(l, h) : 0;
            actual[n] = one.Actual(low, high);
        }

        string said = $"{basis}; interval from {Resamples} resamples";
        if (low is { } least && high is { } most)
        {
            _indices.Add(new ChartCapabilityIndex("Pp", Interval(study.Potential(least, most), potential), said));
        }

        _indices.Add(new ChartCapabilityIndex("Ppk", Interval(study.Actual(low, high), actual), said));
    }

    private static CapabilityIndex Interval(double value, double[] resampled)
    {
        Array.Sort(resampled);
        return new CapabilityIndex(value, resampled[(int)(0.025 * resampled.Length)], resampled[(int)(0.975 * resampled.Length) - 1]);
    }

    private static PercentileCapability? LogNormalPercentiles(double[] values)
    {
        double mean = values.Average(Math.Log),
            deviation = Math.Sqrt(values.Sum(value => Math.Pow(Math.Log(value) - mean, 2)) / (values.Length - 1));
        return deviation > 0 ? PercentileCapability.FromQuantiles(part => LogNormal.InvCDF(mean, deviation, part)) : null;
    }

    private static PercentileCapability? OwnPercentiles(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        PercentileCapability found = PercentileCapability.FromQuantiles(part =>
        {
            double place = part * (sorted.Length - 1);
            int below = (int)place;
            return sorted[below] + (place - below) * (sorted[Math.Min(below + 1, sorted.Length - 1)] - sorted[below]);
        });
        return found.High > found.Median && found.Median > found.Low ? found : null;
    }
}
