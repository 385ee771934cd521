namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Neumann's integral between two offset curves of one former (same centre, axial distance u): bars in closed form, arcs by graded Gauss
/// rules.
/// </summary>
/// <remarks>
/// The curves share half straights a (along x) and c (along y); their corner radii are r1 and r2. Metres; the result times µ0/4π is the
/// mutual inductance.
/// </remarks>
internal static class CoaxialLoops
{
    public static double Integral(double a, double c, double r1, double r2, double u, ArcNodes nodes) =>
        Bars(a, c, r1, r2, u)
        + Bars(c, a, r1, r2, u)
        + ArcAndBars(a, c, r1, r2, u, nodes.Toward)
        + ArcAndBars(a, c, r2, r1, u, nodes.Toward)
        + ArcAndBars(c, a, r1, r2, u, nodes.Toward)
        + ArcAndBars(c, a, r2, r1, u, nodes.Toward)
        + Arcs(a, c, r1, r2, u, nodes);

    /// <summary>The two straights of half length a at ±(c + r): near pairs add, far pairs subtract.</summary>
    private static double Bars(double a, double c, double r1, double r2, double u)
    {
        if (a <= 0)
        {
            return 0;
        }

        double near = Math.Sqrt((r2 - r1) * (r2 - r1) + u * u),
            across = 2 * c + r1 + r2;
        return 2 * (EqualBars(2 * a, near) - EqualBars(2 * a, Math.Sqrt(across * across + u * u)));
    }

    private static double EqualBars(double length, double apart) =>
        2 * (length * Math.Asinh(length / apart) - Math.Sqrt(length * length + apart * apart) + apart);

    /// <summary>
    /// The four quarter arcs of one curve in the potential of the other's straights of half length a, closed form along the bar.
    /// </summary>
    private static double ArcAndBars(double a, double c, double rArc, double rBar, double u, ArcRule rule)
    {
        if (a <= 0)
        {
            return 0;
        }

        double sum = 0,
            uu = u * u,
            shift = rArc - rBar;
        for (int i = 0; i < rule.Sin.Length; i++)
        {
            // Angle 0 is where the arc leaves the straight; sag is written so that nothing cancels there.
            double s = rule.Sin[i],
                co = rule.Cos[i],
                beyond = rArc * s,
                along = 2 * a + beyond;
            double sag = s * s / (1 + co),
                near = shift - rArc * sag,
                far = 2 * c + rArc * co + rBar;
            double nn = near * near + uu,
                ff = far * far + uu;
            double log = Math.Log(
                (along + Math.Sqrt(along * along + nn))
                    * (beyond + Math.Sqrt(beyond * beyond + ff))
                    / ((beyond + Math.Sqrt(beyond * beyond + nn)) * (along + Math.Sqrt(along * along + ff)))
            );
            sum += rule.Weight[i] * co * log;
        }

        return 4 * rArc * sum;
    }

    private static double Arcs(double a, double c, double r1, double r2, double u, ArcNodes nodes)
    {
        if (a <= 0 && c <= 0)
        {
            return 4 * Math.PI * SameCentre(r1, r2, u, 1, _ => 1, nodes.Difference);
        }

        if (c <= 0 || a <= 0)
        {
            double half = Math.Max(a, c);
            return 4 * SameCentre(r1, r2, u, 1, delta => Math.PI - delta, nodes.Difference)
                + 2 * Opposite(half, r1, r2, u, half > 0.5 * (r1 + r2) ? nodes.Plain : nodes.Ends);
        }

        return 8 * SameCentre(r1, r2, u, 0.5, delta => Math.PI / 2 - delta, nodes.Difference)
            + 4 * OtherQuarters(a, c, r1, r2, u, nodes.QuarterEnds);
    }

    /// <summary>∫ weight(δ)·cos δ/R over the angle difference, times both radii; <paramref name="reach"/> shrinks 0…π.</summary>
    private static double SameCentre(double r1, double r2, double u, double reach, Func<double, double> weight, ArcRule rule)
    {
        double sum = 0,
            closest = (r1 - r2) * (r1 - r2) + u * u;
        for (int i = 0; i < rule.Angle.Length; i++)
        {
            double delta = reach * rule.Angle[i],
                s = Math.Sin(delta / 2);
            sum += rule.Weight[i] * weight(delta) * (1 - 2 * s * s) / Math.Sqrt(closest + 4 * r1 * r2 * s * s);
        }

        return reach * r1 * r2 * sum;
    }

    /// <summary>Half circles about (±half, 0); mirror symmetry halves the first angle.</summary>
    private static double Opposite(double half, double r1, double r2, double u, ArcRule rule)
    {
        double sum = 0,
            uu = u * u;
        int n = rule.Angle.Length;
        for (int i = n / 2; i < n; i++)
        {
            double x = 2 * half + r1 * rule.Cos[i],
                y = r1 * rule.Sin[i],
                row = 0;
            for (int j = 0; j < n; j++)
            {
                double dx = x + r2 * rule.Cos[j],
                    dy = y - r2 * rule.Sin[j];
                row += rule.Weight[j] * (rule.Sin[i] * rule.Sin[j] - rule.Cos[i] * rule.Cos[j]) / Math.Sqrt(dx * dx + dy * dy + uu);
            }

            sum += rule.Weight[i] * row;
        }

        return 2 * r1 * r2 * sum;
    }

    /// <summary>One quarter arc with the three that have other centres.</summary>
    private static double OtherQuarters(double a, double c, double r1, double r2, double u, ArcRule rule)
    {
        double sum = 0,
            uu = u * u;
        for (int i = 0; i < rule.Angle.Length; i++)
        {
            double x = a + r1 * rule.Cos[i],
                y = c + r1 * rule.Sin[i],
                row = 0;
            for (int j = 0; j < rule.Angle.Length; j++)
            {
                double px = a + r2 * rule.Cos[j],
                    py = c + r2 * rule.Sin[j];
                double ss = rule.Sin[i] * rule.Sin[j],
                    cc = rule.Cos[i] * rule.Cos[j];
                double xPlus = (x + px) * (x + px),
                    xMinus = (x - px) * (x - px),
                    yPlus = (y + py) * (y + py),
                    yMinus = (y - py) * (y - py);
                row +=
                    rule.Weight[j]
                    * (
                        (ss - cc) / Math.Sqrt(xPlus + yMinus + uu)
                        + (cc - ss) / Math.Sqrt(xMinus + yPlus + uu)
                        - (ss + cc) / Math.Sqrt(xPlus + yPlus + uu)
                    );
            }

            sum += rule.Weight[i] * row;
        }

        return r1 * r2 * sum;
    }
}
