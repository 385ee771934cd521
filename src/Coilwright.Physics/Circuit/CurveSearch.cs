namespace Coilwright.Physics.Circuit;

/// <summary>Finds the marked points of a response on its curve.</summary>
internal static class CurveSearch
{
    private const int StepsPerOctave = 24;

    /// <summary>A rise smaller than this, dB, is rounding.</summary>
    private const double LeastRiseDb = 1e-9;

    public static ResonancePeak? HighestPoint<TCurve>(in TCurve curveOf, double fromHz, double toHz)
        where TCurve : IGainCurve
    {
        Span<double> curve = stackalloc double[Steps(fromHz, toHz) + 1];
        double step = Scan(curveOf, fromHz, toHz, curve);
        double bestHz = 0,
            best = curve[0];
        for (int i = 1; i < curve.Length - 1; i++)
        {
            // Every dip is followed to its bottom: a sharp peak may look lower on the grid than a blunt one.
            if (curve[i] <= curve[i - 1] && curve[i] < curve[i + 1])
            {
                double hz = Lowest(curveOf, fromHz * Math.Exp(step * (i - 1)), fromHz * Math.Exp(step * (i + 1)));
                double attenuation = curveOf.Attenuation(hz);
                (bestHz, best) = attenuation < best ? (hz, attenuation) : (bestHz, best);
            }
        }

        double riseDb = 10 * Math.Log10(curve[0] / best);
        return bestHz > 0 && riseDb > LeastRiseDb ? new ResonancePeak(bestHz, riseDb, QualityOf(curve[0] / best)) : null;
    }

    /// <summary>
    /// Climbs from a guess by steps of 4 %, then narrows the bracket by parabolas; null when it does not end in a rise above the reference.
    /// </summary>
    public static ResonancePeak? PointNear<TCurve>(in TCurve curveOf, double referenceHz, double nearHz, double toHz)
        where TCurve : IGainCurve
    {
        const double Ratio = 1.04;
        double left = nearHz / Ratio,
            middle = nearHz,
            right = nearHz * Ratio;
        double atLeft = curveOf.Attenuation(left),
            atMiddle = curveOf.Attenuation(middle),
            atRight = curveOf.Attenuation(right);
        for (int step = 0; atLeft < atMiddle || atRight < atMiddle; step++)
        {
            if (step == 60 || left < 2 * referenceHz || right > toHz / 2)
            {
                return null;
            }

            if (atLeft < atRight)
            {
                (middle, right, atMiddle, atRight) = (left, middle, atLeft, atMiddle);
                atLeft = curveOf.Attenuation(left /= Ratio);
            }
            else
            {
                (left, middle, atLeft, atMiddle) = (middle, right, atMiddle, atRight);
                atRight = curveOf.Attenuation(right *= Ratio);
            }
        }

        (double hz, double best) = Narrow(curveOf, left, middle, right, atLeft, atMiddle, atRight);
        double reference = curveOf.Attenuation(referenceHz),
            riseDb = 10 * Math.Log10(reference / best);
        return riseDb > LeastRiseDb ? new ResonancePeak(hz, riseDb, QualityOf(reference / best)) : null;
    }

    /// <summary>
    /// Parabola through the bracket's three points, again and again; the bracket only shrinks. Six rounds from 4 % reach 1e-7 on peaks up
    /// to a Q of a hundred.
    /// </summary>
    private static (double Hz, double Attenuation) Narrow<TCurve>(
        in TCurve curveOf,
        double left,
        double middle,
        double right,
        double atLeft,
        double atMiddle,
        double atRight
    )
        where TCurve : IGainCurve
    {
        for (int round = 0; round < 12 && right - left > 1e-7 * middle; round++)
        {
            double p = (middle - left) * (atMiddle - atRight),
                q = (middle - right) * (atMiddle - atLeft);
            double bottom = 2 * (p - q);
            double next = Math.Abs(bottom) > 0 ? middle - ((middle - left) * p - (middle - right) * q) / bottom : middle;
            double edge = 1e-3 * (right - left);
            if (Math.Abs(next - middle) < edge)
            {
                if (round > 5)
                {
                    break;
                }

                next = middle + (right - middle > middle - left ? edge : -edge);
            }

            next = Math.Clamp(next, left + edge / 10, right - edge / 10);
            double at = curveOf.Attenuation(next);
            if (at < atMiddle)
            {
                (left, atLeft, right, atRight) = next < middle ? (left, atLeft, middle, atMiddle) : (middle, atMiddle, right, atRight);
                (middle, atMiddle) = (next, at);
            }
            else if (next < middle)
            {
                (left, atLeft) = (next, at);
            }
            else
            {
                (right, atRight) = (next, at);
            }
        }

        return (middle, atMiddle);
    }

    public static double? LastFall<TCurve>(in TCurve curveOf, double fromHz, double toHz, double dropDb)
        where TCurve : IGainCurve
    {
        Span<double> curve = stackalloc double[Steps(fromHz, toHz) + 1];
        double step = Scan(curveOf, fromHz, toHz, curve);
        double level = curve[0] * Math.Pow(10, dropDb / 10);
        int last = curve.Length - 1;
        if (curve[last] < level)
        {
            return null;
        }

        while (last > 0 && curve[last - 1] >= level)
        {
            last--;
        }

        // Halving in log frequency: 40 halvings of 1/24 octave reach the last digit.
        double low = fromHz * Math.Exp(step * (last - 1)),
            high = fromHz * Math.Exp(step * last);
        for (int i = 0; i < 40; i++)
        {
            double middle = Math.Sqrt(low * high);
            (low, high) = curveOf.Attenuation(middle) < level ? (middle, high) : (low, middle);
        }

        return Math.Sqrt(low * high);
    }

    private static int Steps(double fromHz, double toHz) => (int)Math.Ceiling(StepsPerOctave * Math.Log2(toHz / fromHz));

    private static double Scan<TCurve>(in TCurve curveOf, double fromHz, double toHz, Span<double> curve)
        where TCurve : IGainCurve
    {
        double step = Math.Log(toHz / fromHz) / (curve.Length - 1);
        double ratio = Math.Exp(step),
            hz = fromHz;
        for (int i = 0; i < curve.Length; i++, hz *= ratio)
        {
            curve[i] = curveOf.Attenuation(hz);
        }

        return step;
    }

    /// <summary>Golden section in frequency: the bracket is a twelfth of an octave wide, 36 sections leave 2e-9 of it.</summary>
    private static double Lowest<TCurve>(in TCurve curveOf, double low, double high)
        where TCurve : IGainCurve
    {
        const double Golden = 0.61803398874989485;
        double left = high - Golden * (high - low),
            right = low + Golden * (high - low);
        double atLeft = curveOf.Attenuation(left),
            atRight = curveOf.Attenuation(right);
        for (int i = 0; i < 36; i++)
        {
            if (atLeft < atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - Golden * (high - low);
                atLeft = curveOf.Attenuation(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + Golden * (high - low);
                atRight = curveOf.Attenuation(right);
            }
        }

        return (low + high) / 2;
    }

    /// <summary>See <see cref="ResonancePeak.Q"/>; the argument is M².</summary>
    private static double QualityOf(double squaredHeight) =>
        Math.Sqrt((squaredHeight + Math.Sqrt(squaredHeight * (squaredHeight - 1))) / 2);
}
