namespace Coilwright.Physics.BoundaryElements;

/// <summary>Gauss-Legendre nodes and weights on [0, 1]; the roots by Newton's iteration, exact to rounding.</summary>
internal sealed class GaussRule
{
    private static readonly GaussRule[] Rules = [.. Enumerable.Range(1, 32).Select(n => new GaussRule(n))];

    private GaussRule(int count)
    {
        At = new double[count];
        Weight = new double[count];
        for (int i = 0; i < count; i++)
        {
            double x = Math.Cos(Math.PI * (i + 0.75) / (count + 0.5)),
                slope = 1;
            for (int step = 0; step < 60; step++)
            {
                (double value, slope) = Legendre(count, x);
                double change = value / slope;
                x -= change;
                if (Math.Abs(change) < 1e-16)
                {
                    break;
                }
            }

            At[count - 1 - i] = (1 + x) / 2;
            Weight[count - 1 - i] = 1 / ((1 - x * x) * slope * slope);
        }
    }

    public double[] At { get; }
    public double[] Weight { get; }

    /// <summary>The rule with 1…32 nodes.</summary>
    public static GaussRule WithNodes(int count) => Rules[count - 1];

    private static (double Value, double Slope) Legendre(int n, double x)
    {
        double before = 1,
            value = x;
        for (int k = 2; k <= n; k++)
        {
            (before, value) = (value, ((2 * k - 1) * x * value - (k - 1) * before) / k);
        }

        return (value, n * (x * value - before) / (x * x - 1));
    }
}
