using Coilwright.Physics;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Sampling;

/// <summary>
/// A plan that measures: accept when the mean lies at least k spreads inside the limit. For values that scatter normally, one limit.
/// </summary>
/// <param name="Size">Pieces measured, 2 or more.</param>
/// <param name="K">Least distance of mean and limit, in spreads.</param>
/// <param name="SpreadKnown">True when the spread of the process is known; false when it is taken from the sample.</param>
public sealed record VariablesPlan(int Size, double K, bool SpreadKnown = false)
{
    /// <summary>Probability that a lot is accepted.</summary>
    /// <param name="defective">Part of pieces beyond the limit, 0…1 without its ends.</param>
    /// <remarks>
    /// Spread known: Φ(√n·(z − k)). Else the mean of Φ(√n·(z − k·s/σ)) over the chi distribution of s/σ: the noncentral t without its
    /// tables [derived].
    /// </remarks>
    public double AcceptProbability(double defective)
    {
        double z = -Normal.InvCDF(0, 1, Require.InRange(defective, 1e-12, 1 - 1e-12)),
            root = Math.Sqrt(Size);
        if (SpreadKnown)
        {
            return Normal.CDF(0, 1, root * (z - K));
        }

        double freedom = Size - 1,
            logScale = Math.Log(2) + freedom / 2 * Math.Log(freedom / 2) - SpecialFunctions.GammaLn(freedom / 2);
        double Density(double u) => u <= 0 ? 0 : Math.Exp(logScale + (freedom - 1) * Math.Log(u) - freedom * u * u / 2);
        double width = 12 / Math.Sqrt(2 * freedom),
            low = Math.Max(0, 1 - width),
            high = 1 + width;
        const int Steps = 4000;
        double sum = 0,
            step = (high - low) / Steps;
        for (int at = 0; at <= Steps; at++)
        {
            double u = low + at * step;
            sum += SimpsonRule.WeightAt(at, Steps) * Density(u) * Normal.CDF(0, 1, root * (z - K * u));
        }

        return sum * step / 3;
    }

    /// <summary>The smallest plan that accepts good lots and refuses bad ones; null when none of up to 2,000 pieces does.</summary>
    /// <param name="good">Part defective of a good lot.</param>
    /// <param name="acceptGood">Least probability of accepting it.</param>
    /// <param name="bad">Part defective of a bad lot, above <paramref name="good"/>.</param>
    /// <param name="acceptBad">Largest probability of accepting it.</param>
    /// <param name="spreadKnown">Whether the spread is known.</param>
    public static VariablesPlan? Find(double good, double acceptGood, double bad, double acceptBad, bool spreadKnown)
    {
        (int low, int high) = (1, 2000);
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            bool enough = Sharpest(middle, good, acceptGood, spreadKnown).AcceptProbability(bad) <= acceptBad;
            (low, high) = enough ? (low, middle) : (middle, high);
        }

        VariablesPlan plan = Sharpest(high, good, acceptGood, spreadKnown);
        return plan.AcceptProbability(bad) <= acceptBad ? plan : null;
    }

    /// <summary>The part of a process beyond an upper limit, estimated from a sample.</summary>
    /// <param name="mean">Mean of the sample.</param>
    /// <param name="spread">Spread: of the process when known, else of the sample.</param>
    /// <param name="limit">The upper limit. For a lower limit, change the signs of mean and limit.</param>
    /// <param name="size">Pieces measured, 3 or more.</param>
    /// <param name="spreadKnown">Whether the spread is known.</param>
    /// <remarks>
    /// Minimum-variance unbiased estimate: symmetric beta when the spread is unknown (MIL-STD-414 M method; formula read), normal when
    /// known.
    /// </remarks>
    public static double EstimatedBeyond(double mean, double spread, double limit, int size, bool spreadKnown)
    {
        Require.InRange(size, 3, 1e6);
        double distance = (limit - mean) / Require.InRange(spread, 1e-300, 1e300);
        if (spreadKnown)
        {
            return Normal.CDF(0, 1, -distance * Math.Sqrt(size / (size - 1.0)));
        }

        double x = Math.Clamp(0.5 - 0.5 * distance * Math.Sqrt(size) / (size - 1), 0, 1);
        return SpecialFunctions.BetaRegularized(size / 2.0 - 1, size / 2.0 - 1, x);
    }

    /// <summary>The largest k at which a good lot is still accepted often enough.</summary>
    private static VariablesPlan Sharpest(int size, double good, double acceptGood, bool spreadKnown)
    {
        (double low, double high) = (-10, 10);
        for (int step = 0; step < 60; step++)
        {
            double middle = (low + high) / 2;
            (low, high) =
                new VariablesPlan(size, middle, spreadKnown).AcceptProbability(good) >= acceptGood ? (middle, high) : (low, middle);
        }

        return new VariablesPlan(size, low, spreadKnown);
    }
}
