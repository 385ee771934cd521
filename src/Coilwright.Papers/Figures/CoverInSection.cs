using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Papers.Figures;

/// <summary>Where a cover's wall stands beside a coil, on the long side that lies nearest to it.</summary>
/// <param name="InsideM">From the former, the first turn's place, to the inside of the wall, m.</param>
/// <param name="ThicknessM">Thickness of the wall, m.</param>
/// <param name="Material">Its material.</param>
public sealed record CoverInSection(double InsideM, double ThicknessM, string Material)
{
    /// <summary>The nearest cover's wall; null without a cover about the coil.</summary>
    /// <param name="model">The pickup; its covers stand about the common origin.</param>
    /// <param name="coil">Which coil, from 0.</param>
    public static CoverInSection? Of(PickupModel model, int coil)
    {
        CoilModel one = model.Coils[coil];
        return model
            .Sheets.Where(sheet => sheet.Shape == SheetShape.Cover)
            .Select(sheet => new CoverInSection(
                sheet.WidthM / 2 - sheet.ThicknessM - Math.Abs(one.Position.YM) - one.Bobbin.CoreWidthM / 2,
                sheet.ThicknessM,
                KeyLabels.Of(sheet.Material)
            ))
            .Where(cover => cover.InsideM > 0)
            .MinBy(cover => cover.InsideM);
    }
}
