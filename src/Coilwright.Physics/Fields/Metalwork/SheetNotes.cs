namespace Coilwright.Physics.Fields.Metalwork;

/// <summary>What the model of covers and plates leaves out.</summary>
internal static class SheetNotes
{
    /// <summary>A permeability above this is more than a trace of magnetism.</summary>
    private const double Magnetic = 1.2;

    public static List<FieldNote> Of(FieldProblem problem)
    {
        List<FieldNote> notes = [];
        foreach (SheetModel sheet in problem.Sheets)
        {
            string path = FormattableString.Invariant($"metalwork[{sheet.Place}]");
            if (sheet.RelativePermeability.Value > Magnetic)
            {
                notes.Add(new FieldNote(path, "this sheet is magnetic: only its eddy currents are solved, not the flux it draws"));
            }

            if (sheet.Shape == SheetShape.Plate && sheet.TopM - sheet.BottomM > 1.05 * sheet.ThicknessM + 1e-5)
            {
                notes.Add(new FieldNote(path + ".bottom", "the plate is solved as a flat sheet of its thickness below its top; nothing is reckoned down to the bottom given"));
            }
        }

        return notes;
    }
}
