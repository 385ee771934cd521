using Coilwright.Papers.Figures;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Coilwright.Papers.Labels;

/// <summary>Labels to cut: two columns on A4 or Letter, each with Code 128 and QR of the same text.</summary>
public static class LabelPdf
{
    private const double Width = 88 * Pen.Mm, Height = 33 * Pen.Mm, Margin = 10 * Pen.Mm;

    /// <summary>The document's bytes.</summary>
    public static byte[] Render(IReadOnlyList<PieceLabel> labels, PaperSize size = PaperSize.A4)
    {
        ArgumentOutOfRangeException.ThrowIfZero(labels.Count, nameof(labels));
        if (labels.FirstOrDefault(label => label.Code.Length is 0 or > BarCode.Longest || label.Code.Any(letter => letter is < ' ' or > '~')) is { } wrong)
        {
            throw new ArgumentException($"\"{wrong.Code}\" cannot be put into a bar code.", nameof(labels));
        }

        OwnFonts.Use();
        using PdfDocument document = new();
        document.Info.Title = "Labels";
        Pen pen = new();
        int at = 0;
        while (at < labels.Count)
        {
            PdfPage page = document.AddPage();
            page.Size = size == PaperSize.A4 ? PdfSharp.PageSize.A4 : PdfSharp.PageSize.Letter;
            using XGraphics on = XGraphics.FromPdfPage(page);
            int rows = (int)((page.Height.Point - 2 * Margin) / Height);
            for (int cell = 0; cell < 2 * rows && at < labels.Count; cell++, at++)
            {
                Draw(on, pen, labels[at], Margin + cell % 2 * (Width + 6 * Pen.Mm), Margin + cell / 2 * Height);
            }
        }

        using MemoryStream stream = new();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    private static void Draw(XGraphics on, Pen pen, PieceLabel label, double x, double y)
    {
        on.DrawRectangle(new XPen(Pen.InkColour, 0.3), x, y, Width, Height - 2 * Pen.Mm);
        double square = 24 * Pen.Mm, text = Width - square - 6 * Pen.Mm;
        PdfCode.Square(on, label.Code, new XRect(x + Width - square - Pen.Mm, y + 3 * Pen.Mm, square, square));
        on.DrawString(Pen.Wrap(on, label.Title, pen.Font(13, bold: true), text)[0], pen.Font(13, bold: true), Pen.Ink, x + 3 * Pen.Mm, y + 7 * Pen.Mm);
        double line = y + 8 * Pen.Mm;
        foreach (string said in label.Lines.Take(3))
        {
            line += 3.6 * Pen.Mm;
            on.DrawString(Pen.Wrap(on, said, pen.Font(7.5), text)[0], pen.Font(7.5), Pen.Ink, x + 3 * Pen.Mm, line);
        }

        PdfCode.Bars(on, label.Code, new XRect(x + Pen.Mm, y + 21 * Pen.Mm, text + 2 * Pen.Mm, 8.5 * Pen.Mm));
    }
}
