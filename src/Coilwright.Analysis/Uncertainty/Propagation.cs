using Coilwright.Physics;

namespace Coilwright.Analysis.Uncertainty;

/// <summary>Carries the scatter of a model's inputs to its results, to first order or by seeded sampling.</summary>
public static class Propagation
{
    /// <summary>First-order propagation: each input in turn at both ends of its 95 % interval, contributions added in quadrature.</summary>
    /// <param name="inputs">Independent causes.</param>
    /// <param name="model">Fills the results (second argument) from the input values (first argument); must be finite near the
    /// middle.</param>
    /// <param name="scatters">Shape of each result: positive quantities are propagated in their logarithm.</param>
    /// <remarks>
    /// JCGM 100:2008 §5.1.2 [GUM] with finite differences over the interval in place of derivatives, which takes most of the curvature
    /// along; 2n + 1 runs of the model. A skewed result adds what moves it up and what moves it down each for itself, as a sum of
    /// log-normal parts asks for. Checked against <see cref="Sample"/>.
    /// </remarks>
    public static PropagatedResult[] FirstOrder(
        IReadOnlyList<UncertainInput> inputs,
        Action<double[], double[]> model,
        IReadOnlyList<Scatter> scatters
    )
    {
        int results = scatters.Count;
        double[] at = Middle(inputs),
            middle = new double[results],
            low = new double[results],
            high = new double[results];
        model(at, middle);
        double[,] halfWidths = new double[results, inputs.Count];
        (double Up, double Down)[] squares = new (double Up, double Down)[results];
        bool[] vanishes = new bool[results];
        for (int i = 0; i < inputs.Count; i++)
        {
            if (inputs[i].Estimate.IsExact)
            {
                continue;
            }

            double keep = at[i];
            at[i] = inputs[i].ValueAt(-Estimate.Sigmas95);
            model(at, low);
            at[i] = inputs[i].ValueAt(Estimate.Sigmas95);
            model(at, high);
            at[i] = keep;
            for (int r = 0; r < results; r++)
            {
                bool log = IsLog(scatters[r], middle[r]);
                vanishes[r] |= log && !(low[r] > 0 && high[r] > 0);
                halfWidths[r, i] = log ? HalfOfLog(low[r], middle[r], high[r]) : (high[r] - low[r]) / 2;
                squares[r] = Added(squares[r], Departure(low[r], middle[r], log), Departure(high[r], middle[r], log));
            }
        }

        PropagatedResult[] propagated = new PropagatedResult[results];
        for (int r = 0; r < results; r++)
        {
            propagated[r] = Combine(halfWidths, r, inputs.Count, middle[r], IsLog(scatters[r], middle[r])) with { MayVanish = vanishes[r] };
            if (scatters[r] is Scatter.Skewed or Scatter.SkewedLog)
            {
                propagated[r] = propagated[r] with { Estimate = Skewed(middle[r], squares[r], IsLog(scatters[r], middle[r])) };
            }
        }

        return propagated;
    }

    /// <summary>How far an end of an input moves a result; nothing where the result is not there.</summary>
    private static double Departure(double end, double middle, bool log)
    {
        if (!log)
        {
            return end - middle;
        }

        return end > 0 ? Math.Log(end / middle) : 0;
    }

    /// <summary>Adds the squares of what one input moves up and down.</summary>
    private static (double Up, double Down) Added((double Up, double Down) squares, double first, double second)
    {
        double up = Math.Max(0, Math.Max(first, second)),
            down = Math.Min(0, Math.Min(first, second));
        return (squares.Up + up * up, squares.Down + down * down);
    }

    private static Estimate Skewed(double middle, (double Up, double Down) squares, bool log)
    {
        double up = Math.Sqrt(squares.Up),
            down = Math.Sqrt(squares.Down);
        return log
            ? new Estimate(middle, middle * Math.Exp(-down), middle * Math.Exp(up), Basis.Forecast)
            : new Estimate(middle, middle - down, middle + up, Basis.Forecast);
    }

    /// <summary>Monte Carlo propagation: <paramref name="samples"/> seeded draws, interval from the 2.5 and 97.5 % points.</summary>
    /// <returns>For each result its value at the middle and the sampled 95 % interval.</returns>
    public static Estimate[] Sample(
        IReadOnlyList<UncertainInput> inputs,
        Action<double[], double[]> model,
        int results,
        int samples,
        int seed
    )
    {
        Random random = new(seed);
        double[][] drawn = [.. Enumerable.Range(0, results).Select(_ => new double[samples])];
        double[] at = Middle(inputs),
            outcome = new double[results];
        model(at, outcome);
        double[] middle = [.. outcome];
        for (int s = 0; s < samples; s++)
        {
            for (int i = 0; i < inputs.Count; i++)
            {
                at[i] = inputs[i].ValueAt(MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1));
            }

            model(at, outcome);
            for (int r = 0; r < results; r++)
            {
                drawn[r][s] = outcome[r];
            }
        }

        return [.. drawn.Select((values, r) => Between(values, middle[r]))];
    }

    private static double[] Middle(IReadOnlyList<UncertainInput> inputs) => [.. inputs.Select(input => input.Estimate.Value)];

    private static bool IsLog(Scatter scatter, double middle) => (scatter is Scatter.LogNormal or Scatter.SkewedLog) && middle > 0;

    /// <summary>
    /// Half of what lies between both ends in the logarithm; a result that is not there at one end is taken to move as far that way as the
    /// other.
    /// </summary>
    private static double HalfOfLog(double low, double middle, double high) =>
        (low > 0, high > 0) switch
        {
            (true, true) => Math.Log(high / low) / 2,
            (true, false) => Math.Log(middle / low),
            (false, true) => Math.Log(high / middle),
            _ => 0,
        };

    private static PropagatedResult Combine(double[,] halfWidths, int result, int inputs, double middle, bool log)
    {
        double sum = 0;
        for (int i = 0; i < inputs; i++)
        {
            sum += halfWidths[result, i] * halfWidths[result, i];
        }

        double half = Math.Sqrt(sum);
        double[] shares = new double[inputs];
        for (int i = 0; i < inputs && sum > 0; i++)
        {
            shares[i] = halfWidths[result, i] * halfWidths[result, i] / sum;
        }

        Estimate estimate = log
            ? new Estimate(middle, middle * Math.Exp(-half), middle * Math.Exp(half), Basis.Forecast)
            : new Estimate(middle, middle - half, middle + half, Basis.Forecast);
        return new PropagatedResult(estimate, shares);
    }

    private static Estimate Between(double[] values, double middle)
    {
        Array.Sort(values);
        return new Estimate(middle, Quantile(values, 0.025), Quantile(values, 0.975), Basis.Forecast);
    }

    private static double Quantile(double[] sorted, double fraction)
    {
        double place = fraction * (sorted.Length - 1);
        int below = (int)place;
        double weight = place - below;
        return below + 1 < sorted.Length ? sorted[below] * (1 - weight) + sorted[below + 1] * weight : sorted[below];
    }
}
