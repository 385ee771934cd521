namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>
/// A rounded rectangle seen from above: a box of half sizes BoxX and BoxY about a middle, grown by a radius all round. Box zero: a circle;
/// radius zero: a rectangle. m.
/// </summary>
internal readonly record struct PlanShape(double XM, double YM, double BoxXM, double BoxYM, double RadiusM)
{
    public double HalfXM => BoxXM + RadiusM;
    public double HalfYM => BoxYM + RadiusM;

    public static PlanShape Circle(double xM, double yM, double radiusM) => new(xM, yM, 0, 0, radiusM);

    public static PlanShape Box(double xM, double yM, double halfXM, double halfYM) => new(xM, yM, halfXM, halfYM, 0);

    public static PlanShape Rounded(double xM, double yM, double halfXM, double halfYM, double cornerM)
    {
        double r = Math.Min(cornerM, Math.Min(halfXM, halfYM));
        return new PlanShape(xM, yM, halfXM - r, halfYM - r, r);
    }

    /// <summary>The offset curve at a distance outside (or inside, where negative).</summary>
    public PlanShape Grown(double byM)
    {
        double r = Math.Max(0, RadiusM + byM),
            rest = byM - (r - RadiusM);
        return this with { RadiusM = r, BoxXM = BoxXM + rest, BoxYM = BoxYM + rest };
    }

    /// <summary>How deep two shapes reach into each other, m; zero or less when they are apart, NaN when a size is unknown.</summary>
    public double ReachInto(PlanShape other)
    {
        double gapX = Math.Abs(XM - other.XM) - BoxXM - other.BoxXM,
            gapY = Math.Abs(YM - other.YM) - BoxYM - other.BoxYM,
            round = RadiusM + other.RadiusM;
        return gapX <= 0 || gapY <= 0 ? round - Math.Max(gapX, gapY) : round - Math.Sqrt(gapX * gapX + gapY * gapY);
    }

    /// <summary>How far this shape sticks out of another, m; zero or less when it lies inside.</summary>
    public double SticksOutOf(PlanShape other)
    {
        double overX = Math.Abs(XM - other.XM) + BoxXM - other.BoxXM,
            overY = Math.Abs(YM - other.YM) + BoxYM - other.BoxYM,
            round = RadiusM - other.RadiusM;
        return overX <= 0 || overY <= 0 ? round + Math.Max(overX, overY) : round + Math.Sqrt(overX * overX + overY * overY);
    }
}
