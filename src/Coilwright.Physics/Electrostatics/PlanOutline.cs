namespace Coilwright.Physics.Electrostatics;

/// <summary>A point of an outline, its outward normal, the length of outline it stands for, and the radius (0: straight).</summary>
internal readonly record struct OutlinePoint(double XM, double YM, double NormalX, double NormalY, double LengthM, double RadiusM);

/// <summary>A rectangle with rounded corners seen from above: a former, a winding, a cover, a bar, a round rod. SI units.</summary>
internal readonly record struct PlanOutline(double XM, double YM, double HalfXM, double HalfYM, double RadiusM)
{
    private const int OnLongStraight = 14,
        OnShortStraight = 4,
        OnQuarter = 5;

    public static PlanOutline Round(double xM, double yM, double radiusM) => new(xM, yM, radiusM, radiusM, radiusM);

    /// <summary>The outline so far outside this one.</summary>
    public PlanOutline Grown(double byM) => new(XM, YM, HalfXM + byM, HalfYM + byM, Math.Max(0, RadiusM + byM));

    /// <summary>Distance of a point from the outline, m; negative inside.</summary>
    public double DistanceM(double xM, double yM)
    {
        double qx = Math.Abs(xM - XM) - (HalfXM - RadiusM),
            qy = Math.Abs(yM - YM) - (HalfYM - RadiusM);
        double ax = Math.Max(qx, 0),
            ay = Math.Max(qy, 0);
        return Math.Sqrt(ax * ax + ay * ay) + Math.Min(Math.Max(qx, qy), 0) - RadiusM;
    }

    /// <summary>True when the rectangles about both touch or overlap.</summary>
    public bool Meets(PlanOutline other, double withinM) =>
        Math.Abs(XM - other.XM) <= HalfXM + other.HalfXM + withinM && Math.Abs(YM - other.YM) <= HalfYM + other.HalfYM + withinM;

    /// <summary>Distance along a ray to the outline, from inside or outside, m; infinite beyond the reach.</summary>
    public double AlongM(double xM, double yM, double directionX, double directionY, double reachM)
    {
        const double ReachedM = 2e-6;
        const int MostSteps = 60;
        double along = 0;
        for (int step = 0; step < MostSteps && along <= reachM; step++)
        {
            double away = Math.Abs(DistanceM(xM + along * directionX, yM + along * directionY));
            if (away < ReachedM)
            {
                return along;
            }

            along += away;
        }

        return double.PositiveInfinity;
    }

    /// <summary>Points all round, the normals outward.</summary>
    public List<OutlinePoint> Points()
    {
        List<OutlinePoint> points = [];
        double straightX = 2 * (HalfXM - RadiusM),
            straightY = 2 * (HalfYM - RadiusM);
        for (int side = -1; side <= 1; side += 2)
        {
            AddStraight(points, straightX, OnLongStraight, alongX: true, side);
            AddStraight(points, straightY, OnShortStraight, alongX: false, side);
        }

        for (int k = 0; k < 4 * OnQuarter && RadiusM > 0; k++)
        {
            double angle = (k + 0.5) * Math.PI / (2 * OnQuarter);
            (double sin, double cos) = Math.SinCos(angle);
            points.Add(
                new(
                    XM + Math.Sign(cos) * straightX / 2 + RadiusM * cos,
                    YM + Math.Sign(sin) * straightY / 2 + RadiusM * sin,
                    cos,
                    sin,
                    RadiusM * Math.PI / (2 * OnQuarter),
                    RadiusM
                )
            );
        }

        return points;
    }

    private void AddStraight(List<OutlinePoint> points, double lengthM, int count, bool alongX, int side)
    {
        const double LeastM = 1e-9;
        for (int k = 0; k < count && lengthM > LeastM; k++)
        {
            double along = lengthM * ((k + 0.5) / count - 0.5);
            points.Add(
                alongX
                    ? new(XM + along, YM + side * HalfYM, 0, side, lengthM / count, 0)
                    : new(XM + side * HalfXM, YM + along, side, 0, lengthM / count, 0)
            );
        }
    }
}
