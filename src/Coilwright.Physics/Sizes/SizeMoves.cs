using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Sizes;

/// <summary>A pickup with one of its lengths changed; everything else stays where it was.</summary>
public static class SizeMoves
{
    /// <summary>A length does not fall below this part of itself, however rare the draw.</summary>
    private const double Least = 0.05;

    /// <summary>The pickup with a length changed.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="size">One of its lengths.</param>
    /// <param name="byM">By how much, m.</param>
    public static PickupModel Move(PickupModel model, PartSize size, double byM)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(size);
        if (size.Kind == SizeKind.Clearance)
        {
            return model with { Strings = model.Strings is { } set ? set with { ClearanceM = Grown(set.ClearanceM, byM) } : null };
        }

        if (size.IsOfCoil)
        {
            return model with { Coils = [.. model.Coils.Select((coil, c) => c == size.Part ? Move(coil, size, byM) : coil)] };
        }

        return size.Kind <= SizeKind.BarZ
            ? model with
            {
                Bars = [.. model.Bars.Select((bar, b) => b == size.Part ? Move(bar, size.Kind, byM) : bar)],
            }
            : model with
            {
                Sheets = [.. model.Sheets.Select((sheet, s) => s == size.Part ? Move(sheet, size.Kind, byM) : sheet)],
            };
    }

    /// <summary>A bobbin with one of its lengths changed; a round end stays round.</summary>
    /// <param name="bobbin">The bobbin.</param>
    /// <param name="kind">Which length; those of other parts leave it as it is.</param>
    /// <param name="byM">By how much, m.</param>
    public static Bobbin Move(Bobbin bobbin, SizeKind kind, double byM)
    {
        ArgumentNullException.ThrowIfNull(bobbin);
        return kind switch
        {
            SizeKind.CoreLength => Rounded(bobbin with { CoreLengthM = Grown(bobbin.CoreLengthM, byM) }, bobbin.EndRadiusM),
            SizeKind.CoreWidth => Rounded(
                bobbin with
                {
                    CoreWidthM = Grown(bobbin.CoreWidthM, byM),
                },
                IsRound(bobbin) ? bobbin.EndRadiusM + byM / 2 : bobbin.EndRadiusM
            ),
            SizeKind.EndRadius => Rounded(bobbin, bobbin.EndRadiusM + byM),
            SizeKind.WindingHeight => bobbin with { WindingHeightM = Grown(bobbin.WindingHeightM, byM) },
            SizeKind.MostBuild => bobbin with { MaxBuildM = Grown(bobbin.MaxBuildM, byM) },
            SizeKind.Wall => bobbin with { WallM = Grown(bobbin.WallM, byM) },
            SizeKind.Flange => bobbin with { FlangeM = Grown(bobbin.FlangeM, byM) },
            _ => bobbin,
        };
    }

    /// <summary>True for a former whose ends are half circles.</summary>
    /// <param name="bobbin">The former.</param>
    public static bool IsRound(Bobbin bobbin)
    {
        ArgumentNullException.ThrowIfNull(bobbin);
        return bobbin.EndRadiusM > bobbin.CoreWidthM / 2 - 1e-7;
    }

    private static Bobbin Rounded(Bobbin bobbin, double radiusM) =>
        bobbin with
        {
            EndRadiusM = Math.Clamp(radiusM, 0, Math.Min(bobbin.CoreLengthM, bobbin.CoreWidthM) / 2),
        };

    private static CoilModel Move(CoilModel coil, PartSize size, double byM) =>
        size.IsOfBobbin
            ? coil with
            {
                Bobbin = Move(coil.Bobbin, size.Kind, byM),
            }
            : coil with
            {
                Poles = [.. coil.Poles.Select((pole, p) => p == size.Row ? Move(pole, size, byM) : pole)],
            };

    private static PoleModel Move(PoleModel pole, PartSize size, double byM) =>
        size.Kind switch
        {
            SizeKind.PoleDiameter => pole with
            {
                DiameterM = Grown(pole.DiameterM, byM),
                WidthM = pole.Shape == PoleShape.Blade ? pole.WidthM : Grown(pole.WidthM, byM),
            },
            SizeKind.PoleWidth => pole with { WidthM = Grown(pole.WidthM, byM) },
            SizeKind.PoleLength => pole with { LengthM = Grown(pole.LengthM, byM) },
            SizeKind.HeadDiameter => pole with { HeadDiameterM = Grown(pole.HeadDiameterM, byM) },
            SizeKind.HeadHeight => pole with { HeadHeightM = Grown(pole.HeadHeightM, byM) },
            SizeKind.PoleSpacing => pole with { PositionsM = [.. pole.PositionsM.Select(xM => xM * (1 + byM / size.Estimate.Value))] },
            SizeKind.PoleTop => pole with { TopsM = [.. pole.TopsM.Select(zM => zM + byM)] },
            _ => pole,
        };

    private static BarModel Move(BarModel bar, SizeKind kind, double byM)
    {
        (Vector3M size, Vector3M at) = (bar.SizeM, bar.CentreM);
        return kind switch
        {
            SizeKind.BarLength => bar with { SizeM = size with { XM = Grown(size.XM, byM) } },
            SizeKind.BarWidth => bar with { SizeM = size with { YM = Grown(size.YM, byM) } },
            SizeKind.BarHeight => bar with { SizeM = size with { ZM = Grown(size.ZM, byM) } },
            SizeKind.BarX => bar with { CentreM = at with { XM = at.XM + byM } },
            SizeKind.BarY => bar with { CentreM = at with { YM = at.YM + byM } },
            SizeKind.BarZ => bar with { CentreM = at with { ZM = at.ZM + byM } },
            _ => bar,
        };
    }

    private static SheetModel Move(SheetModel sheet, SizeKind kind, double byM) =>
        kind switch
        {
            SizeKind.SheetThickness => sheet with { ThicknessM = Grown(sheet.ThicknessM, byM) },
            SizeKind.SheetLength => sheet with { LengthM = Grown(sheet.LengthM, byM) },
            SizeKind.SheetWidth => sheet with { WidthM = Grown(sheet.WidthM, byM) },
            SizeKind.SheetTop => sheet with { TopM = sheet.TopM + byM },
            SizeKind.SheetBottom => sheet with { BottomM = sheet.BottomM + byM },
            SizeKind.SheetCorner => sheet with { CornerM = Grown(sheet.CornerM, byM) },
            _ => sheet,
        };

    private static double Grown(double lengthM, double byM) => Math.Max(Least * lengthM, lengthM + byM);

    private static double? Grown(double? lengthM, double byM) => lengthM is { } known ? Grown(known, byM) : null;
}
