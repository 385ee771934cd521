namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Holes that poles passing through a cover or plate must have: as wide as the pole and a clearance.</summary>
internal static class SheetHoles
{
    /// <summary>Radial clearance of a pole in its hole, m (our assumption).</summary>
    private const double ClearanceM = 0.1e-3;

    /// <summary>Holes as x, y, radius.</summary>
    public static IReadOnlyList<(double X, double Y, double Radius)> Of(FieldProblem problem, SheetModel sheet)
    {
        List<(double, double, double)> holes = [];
        SheetOutline outline = SheetOutline.FromSheet(sheet);
        double high = sheet.TopM,
            low = sheet.TopM - sheet.ThicknessM;
        foreach (FieldCoil coil in problem.Coils)
        {
            foreach (PoleModel pole in coil.Poles.Where(pole => pole.Shape != PoleShape.Blade))
            {
                for (int i = 0; i < pole.PositionsM.Count; i++)
                {
                    double top = coil.Position.ZM + pole.TopsM[Math.Min(i, pole.TopsM.Count - 1)],
                        x = coil.Position.XM + pole.PositionsM[i];
                    bool head = pole.HeadHeightM > 0 && top - pole.HeadHeightM < high;
                    double radius = (head ? Math.Max(pole.HeadDiameterM, pole.DiameterM) : pole.DiameterM) / 2;
                    if (top > low && top - pole.LengthM < high && outline.Contains(x, coil.Position.YM))
                    {
                        holes.Add((x, coil.Position.YM, radius + ClearanceM));
                    }
                }
            }
        }

        return holes;
    }
}
