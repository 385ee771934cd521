namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Covers and plates that draw flux, which the solution leaves out, and how far that may put it off.</summary>
/// <remarks>
/// The shares are our assumption, wider than what flat sheets of permeability 10 to 500 do to a six-rod coil when they are solved as thin
/// bars: a plate of 1 mm under it
/// inductance +5 to +11 %, field +5 to +12 %; walls of 0.5 mm area −6 to −20 %; a sheet of 0.5 mm over the poles field −24 to −77 %.
/// </remarks>
internal static class MagneticSheets
{
    /// <summary>A permeability above this is more than a trace of magnetism.</summary>
    public const double Magnetic = 1.2;

    /// <summary>Half-width of the interval of an inductance or area, as a share of the whole (95 %).</summary>
    public const double InductanceShare = 0.3;

    /// <summary>
    /// The same of the magnets' field and of the output when the sheet lies below the poles or beside them, and when it lies over them (a
    /// factor of four).
    /// </summary>
    public const double BelowShare = 0.5,
        OverShare = 3;

    /// <summary>How far the magnets' field and the output may be off for magnetic sheets that are not solved; zero without such.</summary>
    public static double FieldShare(FieldProblem problem) =>
        problem.Sheets.Where(Draws).Select(sheet => IsOver(problem, sheet) ? OverShare : BelowShare).DefaultIfEmpty(0).Max();

    private static bool IsOver(FieldProblem problem, SheetModel sheet) => problem.Coils.Any(coil => sheet.TopM > coil.Position.ZM);

    /// <summary>True if a sheet is more than a trace magnetic.</summary>
    public static bool Draws(SheetModel sheet) => sheet.RelativePermeability.Value > Magnetic;

    /// <summary>A signed half-width with a share of the whole on top, in quadrature.</summary>
    public static double Widen(double half, double whole, double share)
    {
        double sign = Math.Abs(half) > 0 ? half : whole;
        return share > 0 ? Math.CopySign(Math.Sqrt(half * half + share * whole * share * whole), sign) : half;
    }
}
