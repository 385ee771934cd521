namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// Outline of a sheet's middle: half lengths along x and y and corner radius, m. Nested outlines shrink from it to a line or a point.
/// </summary>
/// <param name="HalfLongM">Half the longer side.</param>
/// <param name="HalfWideM">Half the shorter side.</param>
/// <param name="CornerM">Corner radius, 0 to half the shorter side.</param>
/// <param name="Turned">True when the longer side lies along y.</param>
internal readonly record struct SheetOutline(double HalfLongM, double HalfWideM, double CornerM, bool Turned)
{
    /// <summary>Outline of the middle of a cover's wall, or the edge of a plate.</summary>
    public static SheetOutline FromSheet(SheetModel sheet)
    {
        double inset = sheet.Shape == SheetShape.Cover ? sheet.ThicknessM / 2 : 0;
        double x = sheet.LengthM / 2 - inset,
            y = sheet.WidthM / 2 - inset,
            small = Math.Min(x, y);
        double corner = Math.Clamp((sheet.CornerM ?? Math.Min(sheet.LengthM, sheet.WidthM) / 2) - inset, 0, small);
        const double Nothing = 1e-9; // m: a straight or a corner this short is none
        double rounded = corner < Nothing ? 0 : corner;
        return new SheetOutline(Math.Max(x, y), small, small - corner < Nothing ? small : rounded, y > x);
    }

    /// <summary>
    /// Pieces of a quarter of the outline: half the short straight, the corner, half the long straight, each cut to about a length.
    /// </summary>
    public (int Short, int Corner, int Long) Cuts(double step) =>
        (Parts(HalfWideM - CornerM, step, 1), Parts(CornerM * Math.PI / 2, step, 3), Parts(HalfLongM - CornerM, step, 1));

    /// <summary>
    /// Point of the outline shrunk by a share 0…1, from the far end of the long side (column 0) to the middle of the other.
    /// </summary>
    /// <param name="shrunk">How far toward the middle.</param>
    /// <param name="column">Place along the quarter, in cuts; between two cuts too.</param>
    /// <param name="cuts">Pieces of the quarter.</param>
    /// <param name="stretch">Factor on the corner's radius within the corner: a polygon's corners stand out so that it has the arc's
    /// area.</param>
    public (double X, double Y) At(double shrunk, double column, (int Short, int Corner, int Long) cuts, double stretch = 1)
    {
        double x = HalfLongM - shrunk * HalfWideM,
            y = HalfWideM * (1 - shrunk),
            r = CornerM * (1 - shrunk),
            alongX,
            alongY;
        if (column < cuts.Short)
        {
            (alongX, alongY) = (x, (y - r) * column / cuts.Short);
        }
        else if (column <= cuts.Short + cuts.Corner && cuts.Corner > 0)
        {
            (double sin, double cos) = Math.SinCos(Math.PI / 2 * (column - cuts.Short) / cuts.Corner);
            bool end = (column <= cuts.Short && cuts.Short > 0) || (column >= cuts.Short + cuts.Corner && cuts.Long > 0);
            double reach = end ? r : r * stretch;
            (alongX, alongY) = (x - r + reach * cos, y - r + reach * sin);
        }
        else
        {
            (alongX, alongY) = ((x - r) * (cuts.Short + cuts.Corner + cuts.Long - column) / Math.Max(1, cuts.Long), y);
        }

        return (alongX, alongY);
    }

    /// <summary>Factor on a corner's radius that gives the polygon of its cuts the arc's area.</summary>
    public static double EqualArea(int cornerCuts)
    {
        double step = cornerCuts > 0 ? Math.PI / 2 / cornerCuts : 0;
        return step > 0 ? Math.Sqrt(step / Math.Sin(step)) : 1;
    }

    /// <summary>True if a point lies inside the outline, by x and y along the axes.</summary>
    public bool Contains(double x, double y)
    {
        (x, y) = Turned ? (Math.Abs(y), Math.Abs(x)) : (Math.Abs(x), Math.Abs(y));
        double dx = x - (HalfLongM - CornerM),
            dy = y - (HalfWideM - CornerM);
        return x < HalfLongM && y < HalfWideM && (dx <= 0 || dy <= 0 || dx * dx + dy * dy < CornerM * CornerM);
    }

    private static int Parts(double length, double step, int least) => length <= 0 ? 0 : Math.Max(least, (int)Math.Round(length / step));
}
