using MathNet.Numerics.LinearAlgebra;

namespace Coilwright.Analysis.Learning;

/// <summary>
/// Effects that add up, each normal about nothing with a known variance, seen through cells of known precision: what is known of every
/// effect and of every sum of them.
/// </summary>
/// <remarks>
/// Linear normal hierarchical model with known variances [Gelman2013, chapter 5.4 and 15]: the precisions of prior and data add. With one
/// effect for each cell and one in common it is the closed form of chapter 5.4; checked against that and against a sampling run.
/// </remarks>
public sealed class NormalHierarchy
{
    private readonly Dictionary<Effect, int> _places = [];
    private readonly List<EffectPrior> _priors = [];
    private readonly Func<EffectKind, double> _times;
    private readonly Vector<double> _mean;
    private readonly Matrix<double> _covariance;

    /// <summary>Solves the model.</summary>
    /// <param name="cells">What was read.</param>
    /// <param name="times">What the variances of a kind are multiplied by, above zero.</param>
    public NormalHierarchy(IReadOnlyList<LearningCell> cells, Func<EffectKind, double> times)
    {
        _times = times;
        foreach (EffectPrior prior in cells.SelectMany(cell => cell.Effects))
        {
            if (_places.TryAdd(prior.Effect, _priors.Count))
            {
                _priors.Add(prior);
            }
        }

        Matrix<double> precision = Matrix<double>.Build.Dense(_priors.Count, _priors.Count);
        Vector<double> seen = Vector<double>.Build.Dense(_priors.Count);
        for (int e = 0; e < _priors.Count; e++)
        {
            precision[e, e] = 1 / VarianceOf(_priors[e]);
        }

        foreach (LearningCell cell in cells)
        {
            int[] places = [.. cell.Effects.Select(one => _places[one.Effect])];
            foreach (int row in places)
            {
                seen[row] += cell.Precision * cell.Mean;
                foreach (int column in places)
                {
                    precision[row, column] += cell.Precision;
                }
            }
        }

        if (_priors.Count == 0)
        {
            (_mean, _covariance) = (seen, precision);
            return;
        }

        _covariance = precision.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(_priors.Count));
        _mean = _covariance * seen;
    }

    /// <summary>Every effect that was seen.</summary>
    public IReadOnlyList<EffectPrior> Effects => _priors;

    /// <summary>True for an effect that was seen.</summary>
    public bool Knows(Effect effect) => _places.ContainsKey(effect);

    /// <summary>Variance of an effect before anything was read.</summary>
    public double VarianceOf(EffectPrior prior) => prior.Variance * _times(prior.Effect.Kind);

    /// <summary>Mean and variance of a sum of effects; one that was not seen adds nothing to the mean and all its doubt.</summary>
    public (double Mean, double Variance) Sum(IReadOnlyList<EffectPrior> effects)
    {
        double mean = 0,
            variance = 0;
        foreach (EffectPrior one in effects)
        {
            if (!_places.TryGetValue(one.Effect, out int row))
            {
                variance += VarianceOf(one);
                continue;
            }

            mean += _mean[row];
            foreach (EffectPrior other in effects)
            {
                variance += _places.TryGetValue(other.Effect, out int column) ? _covariance[row, column] : 0;
            }
        }

        return (mean, variance);
    }
}
