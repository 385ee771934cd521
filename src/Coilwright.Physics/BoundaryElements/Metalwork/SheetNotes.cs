using System.Globalization;

namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>What the model of covers and plates leaves out.</summary>
internal static class SheetNotes
{
    public static List<FieldNote> Describe(FieldProblem problem)
    {
        List<FieldNote> notes = [];
        foreach (SheetModel sheet in problem.Sheets)
        {
            string path = FormattableString.Invariant($"metalwork[{sheet.Place}]");
            if (MagneticSheets.Draws(sheet))
            {
                notes.Add(
                    new FieldNote(
                        path,
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"this sheet is magnetic: only its eddy currents are solved, not the flux it draws; inductance may be off "
                                + $"by {100 * MagneticSheets.InductanceShare:F0} %, output and field by a half, over the poles by a "
                                + $"factor of four (our assumption; permeability 1 to {MagneticSheets.Magnetic:F1} is solved in full)"
                        )
                    )
                );
            }

            if (sheet.Shape == SheetShape.Plate && sheet.TopM - sheet.BottomM > 1.05 * sheet.ThicknessM + 1e-5)
            {
                notes.Add(
                    new FieldNote(
                        path + ".bottom",
                        "the plate is solved as a flat sheet of its thickness below its top; nothing is reckoned down to the bottom given"
                    )
                );
            }
        }

        return notes;
    }
}
