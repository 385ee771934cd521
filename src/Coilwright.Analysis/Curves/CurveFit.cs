using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>A set of parts that the data cannot tell apart, or one that they do not reach.</summary>
/// <param name="Names">Names of the parts as in a lumped file.</param>
/// <param name="Factor">By what factor they can change together before the fit shows it (95 %); infinite when it never does.</param>
public sealed record UntoldParts(IReadOnlyList<string> Names, double Factor);

/// <summary>What a measured curve says about a pickup.</summary>
/// <param name="Parts">Which parts were fitted.</param>
/// <param name="Pickup">Their best values.</param>
/// <param name="Fit">The fit itself; look at <see cref="LeastSquaresFit.Converged"/>.</param>
/// <param name="Untold">What the data cannot tell; empty when everything is determined.</param>
public sealed record CurveFit(PickupParts Parts, LumpedPickup Pickup, LeastSquaresFit Fit, IReadOnlyList<UntoldParts> Untold)
{
    /// <summary>A part's logarithm shifts by less than this (95 %) where the data determine it: a factor of 1.5.</summary>
    private const double LogOfKnown = 0.405;

    /// <summary>One part with its 95 % interval; the interval belongs to the logarithm, so it is never negative.</summary>
    public Estimate Part(int parameter)
    {
        double value = Math.Exp(Fit.Parameters[parameter]),
            reach = Student95(Fit.FreedomCount) * Fit.Deviation(parameter);
        return double.IsFinite(reach) && reach < 50
            ? new Estimate(value, value * Math.Exp(-reach), value * Math.Exp(reach), Basis.Measured)
            : new Estimate(value, 0, double.MaxValue, Basis.Measured);
    }

    /// <summary>A quantity that follows from the parts, with its interval to first order.</summary>
    public Estimate Derived(Func<LumpedPickup, double> quantity)
    {
        int n = Fit.Parameters.Length;
        double value = quantity(Pickup);
        double[] slope = new double[n],
            shifted = (double[])Fit.Parameters.Clone();
        for (int i = 0; i < n; i++)
        {
            const double Step = 1e-5;
            shifted[i] += Step;
            double up = quantity(Parts.CreatePickup(shifted));
            shifted[i] -= 2 * Step;
            slope[i] = (up - quantity(Parts.CreatePickup(shifted))) / (2 * Step);
            shifted[i] = Fit.Parameters[i];
        }

        double variance = 0;
        foreach (FitDirection direction in Fit.Directions)
        {
            double along = Enumerable.Range(0, n).Sum(i => slope[i] * direction.Vector[i]);
            variance +=
                Math.Abs(along) > 1e-9 * Math.Abs(value) || double.IsFinite(direction.Deviation)
                    ? along * along * direction.Deviation * direction.Deviation
                    : 0;
        }

        double reach = Student95(Fit.FreedomCount) * Math.Sqrt(variance);
        return double.IsFinite(reach)
            ? new Estimate(value, value - reach, value + reach, Basis.Measured)
            : new Estimate(value, -double.MaxValue, double.MaxValue, Basis.Measured);
    }

    /// <summary>Directions in which the parts can move together by more than a factor of 1.5 without the data showing it.</summary>
    internal static IReadOnlyList<UntoldParts> FindUntold(PickupParts parts, LeastSquaresFit fit)
    {
        List<UntoldParts> untold = [];
        double student = Student95(fit.FreedomCount);
        foreach (FitDirection direction in fit.Directions)
        {
            double length = direction.Vector.Max(Math.Abs),
                reach = student * direction.Deviation * length;
            if (reach > LogOfKnown)
            {
                // Parts that move by at least a third of the largest move.
                string[] names =
                [
                    .. Enumerable.Range(0, parts.Count).Where(i => Math.Abs(direction.Vector[i]) > length / 3).Select(parts.NameOf),
                ];
                // A curve of gain has its level as one parameter more.
                untold.Add(new UntoldParts(names.Length > 0 ? names : ["level"], Math.Exp(Math.Min(reach, 700))));
            }
        }

        return untold;
    }

    /// <summary>Two-sided 95 % point of Student's distribution.</summary>
    internal static double Student95(int freedoms) => MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, freedoms, 0.975);
}
