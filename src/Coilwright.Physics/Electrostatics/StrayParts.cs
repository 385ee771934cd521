namespace Coilwright.Physics.Electrostatics;

/// <summary>Finds the conducting parts of a pickup and which of them touch.</summary>
internal static class StrayParts
{
    /// <summary>Parts nearer than this are taken to touch, m: paint, rust and play are left out. Assumption.</summary>
    private const double TouchM = 0.1e-3;

    /// <summary>What conducts worse is an insulator here (ferrite), S/m.</summary>
    private const double LeastSPerM = 1e3;

    public static List<StrayPart> From(PickupModel model)
    {
        List<StrayPart> parts = [];
        for (int c = 0; c < model.Coils.Count; c++)
        {
            foreach (PoleModel row in model.Coils[c].Poles.Where(row => row.ConductivitySPerM.Value > LeastSPerM))
            {
                AddRow(parts, model.Coils[c].Position, row, c);
            }
        }

        parts.AddRange(model.Bars.Where(bar => bar.ConductivitySPerM.Value > LeastSPerM).Select(Bar));
        parts.AddRange(model.Sheets.Where(sheet => sheet.ConductivitySPerM.Value > LeastSPerM).Select(Sheet));
        Number(parts);
        return parts;
    }

    private static void AddRow(List<StrayPart> parts, Vector3M at, PoleModel row, int coil)
    {
        for (int p = 0; p < row.PositionsM.Count; p++)
        {
            double xM = at.XM + row.PositionsM[p],
                topM = at.ZM + row.TopsM[p],
                radiusM = row.DiameterM / 2;
            PlanOutline shaft =
                row.Shape == PoleShape.Blade
                    ? new PlanOutline(xM, at.YM, row.WidthM / 2, radiusM, 0)
                    : PlanOutline.Round(xM, at.YM, radiusM);
            parts.Add(new StrayPart(shaft, topM, topM - row.LengthM, coil) { Grounded = row.Grounded });
            if (row.HeadDiameterM > row.DiameterM && row.HeadHeightM > 0)
            {
                PlanOutline head = PlanOutline.Round(xM, at.YM, row.HeadDiameterM / 2);
                parts.Add(new StrayPart(head, topM, topM - row.HeadHeightM, coil) { Grounded = row.Grounded });
            }
        }
    }

    private static StrayPart Bar(BarModel bar) =>
        new(
            new PlanOutline(bar.CentreM.XM, bar.CentreM.YM, bar.SizeM.XM / 2, bar.SizeM.YM / 2, 0),
            bar.CentreM.ZM + bar.SizeM.ZM / 2,
            bar.CentreM.ZM - bar.SizeM.ZM / 2,
            Coil: -1
        )
        {
            Grounded = bar.Grounded,
        };

    private static StrayPart Sheet(SheetModel sheet) =>
        new(
            new PlanOutline(
                0,
                0,
                sheet.LengthM / 2,
                sheet.WidthM / 2,
                Math.Min(sheet.CornerM ?? double.PositiveInfinity, Math.Min(sheet.LengthM, sheet.WidthM) / 2)
            ),
            sheet.TopM,
            sheet.BottomM,
            Coil: -1
        )
        {
            Grounded = sheet.Grounded,
            UsuallyGrounded = true,
            WallM = sheet.Shape == SheetShape.Cover ? sheet.ThicknessM : 0,
        };

    /// <summary>Parts that touch get one number; numbers run from zero without gaps.</summary>
    private static void Number(List<StrayPart> parts)
    {
        int groups = 0;
        foreach (StrayPart part in parts)
        {
            part.Group = -1;
        }

        foreach (StrayPart part in parts.Where(part => part.Group < 0))
        {
            Spread(parts, part, groups++);
        }
    }

    private static void Spread(List<StrayPart> parts, StrayPart from, int group)
    {
        from.Group = group;
        foreach (StrayPart other in parts.Where(other => other.Group < 0 && Touch(from, other)))
        {
            Spread(parts, other, group);
        }
    }

    /// <summary>A cover encloses what it does not touch: it is joined to nothing here.</summary>
    private static bool Touch(StrayPart a, StrayPart b) =>
        !a.IsCover && !b.IsCover && a.BottomM <= b.TopM + TouchM && b.BottomM <= a.TopM + TouchM && a.Plan.Meets(b.Plan, TouchM);
}
