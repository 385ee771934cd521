using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;
using PdfSharp.Drawing;

namespace Coilwright.Papers.Labels;

/// <summary>Labels to cut: two columns on A4 or Letter, each with Code 128 and QR of the same text.</summary>
public static class LabelPdf
{
    private const double Height = 33 * Pen.Mm;

    /// <summary>The document's bytes.</summary>
    /// <param name="labels">At least one.</param>
    /// <param name="size">The paper.</param>
    /// <exception cref="ArgumentException">A code that cannot be put into bars.</exception>
    public static byte[] Render(IReadOnlyList<PieceLabel> labels, PaperSize size = PaperSize.A4) =>
        LabelGrid.Render(labels, label => label.Code, Height, size, Draw);

    private static void Draw(XGraphics on, Pen pen, PieceLabel label, XPoint corner)
    {
        (double x, double y) = (corner.X, corner.Y);
        on.DrawRectangle(new XPen(Pen.InkColour, 0.3), x, y, LabelGrid.Width, Height - 2 * Pen.Mm);
        double square = 24 * Pen.Mm,
            text = LabelGrid.Width - square - 6 * Pen.Mm;
        PdfCode.Square(on, label.Code, new XRect(x + LabelGrid.Width - square - Pen.Mm, y + 2 * Pen.Mm, square, square));
        Line(on, pen, label.Title, 13, true, text, x + 3 * Pen.Mm, y + 7 * Pen.Mm);
        double line = y + 8 * Pen.Mm;
        foreach (string said in label.Lines.Take(3))
        {
            line += 3.6 * Pen.Mm;
            Line(on, pen, said, 7.5, false, text, x + 3 * Pen.Mm, line);
        }

        PdfCode.Bars(on, label.Code, new XRect(x + Pen.Mm, y + 20 * Pen.Mm, text + 2 * Pen.Mm, (label.HasMagnets ? 6.5 : 8.5) * Pen.Mm));
        if (label.HasMagnets)
        {
            double whole = LabelGrid.Width - 6 * Pen.Mm;
            Line(on, pen, "CAUTION " + Cautions.MagnetsOnLabel, 6, false, whole, x + 3 * Pen.Mm, y + 28.4 * Pen.Mm);
            Line(on, pen, Cautions.ClosingLine, 5.5, false, whole, x + 3 * Pen.Mm, y + 30.3 * Pen.Mm);
        }
    }

    /// <summary>One line, made smaller until it fits; what is still too long at 5 points ends in "…".</summary>
    private static void Line(XGraphics on, Pen pen, string text, double points, bool bold, double width, double x, double y)
    {
        double size = pen.Fitting(on, text, points, 5, bold, width);
        IReadOnlyList<string> lines = Pen.Wrap(on, text, pen.Font(size, bold), width);
        string shown = lines.Count == 1 ? text : Pen.Wrap(on, text, pen.Font(size, bold), width - size)[0] + "…";
        on.DrawString(shown, pen.Font(size, bold), Pen.Ink, x, y);
    }
}
