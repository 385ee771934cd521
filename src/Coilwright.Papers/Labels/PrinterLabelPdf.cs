using Coilwright.Papers.Pdf;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Coilwright.Papers.Labels;

/// <summary>Labels for a label printer: one a page, the page as large as the label.</summary>
public static class PrinterLabelPdf
{
    /// <summary>The document's bytes.</summary>
    /// <param name="labels">At least one.</param>
    /// <param name="size">The label.</param>
    /// <exception cref="ArgumentException">A label that this size has no room for, or a code that cannot be printed.</exception>
    public static byte[] Render(IReadOnlyList<PieceLabel> labels, LabelSize size)
    {
        ArgumentOutOfRangeException.ThrowIfZero(labels.Count, nameof(labels));
        LabelLayout[] laid = [.. labels.Select(label => LabelLayout.Of(label, size))];
        using PdfDocument document = new();
        document.Info.Title = "Labels " + size.Words;
        document.Info.Creator = "Coilwright";
        Pen pen = new();
        foreach (LabelLayout layout in laid)
        {
            Draw(document.AddPage(), layout, pen);
        }

        using MemoryStream stream = new();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    private static void Draw(PdfPage page, LabelLayout layout, Pen pen)
    {
        (page.Width, page.Height) = (XUnit.FromMillimeter(layout.Size.WidthMm), XUnit.FromMillimeter(layout.Size.HeightMm));
        using XGraphics on = XGraphics.FromPdfPage(page);
        PdfCode.Square(on, layout.Label.Code, layout.Square);
        foreach (LabelText text in layout.Texts)
        {
            on.DrawString(text.Text, pen.Font(text.Size, text.Bold), Pen.Ink, text.X, text.Baseline);
        }
    }
}
