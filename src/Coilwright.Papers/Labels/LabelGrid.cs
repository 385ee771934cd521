using Coilwright.Papers.Figures;
using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Coilwright.Papers.Labels;

/// <summary>Equal labels in two columns over as many pages as they need.</summary>
internal static class LabelGrid
{
    public const double Width = 88 * Pen.Mm;

    private const double Margin = 10 * Pen.Mm;

    /// <summary>The document's bytes.</summary>
    /// <param name="labels">At least one.</param>
    /// <param name="codeOf">What a label's code says.</param>
    /// <param name="height">Height of a label with the gap below it, points.</param>
    /// <param name="size">The paper.</param>
    /// <param name="draw">Draws a label with its upper left corner at x, y.</param>
    public static byte[] Render<T>(
        IReadOnlyList<T> labels,
        Func<T, string> codeOf,
        double height,
        PaperSize size,
        Action<XGraphics, Pen, T, XPoint> draw
    )
    {
        ArgumentOutOfRangeException.ThrowIfZero(labels.Count, nameof(labels));
        if (
            labels
                .Select(codeOf)
                .FirstOrDefault(code => code.Length is 0 or > BarCode.Longest || code.Any(letter => letter is < ' ' or > '~')) is
            { } wrong
        )
        {
            throw new ArgumentException($"\"{wrong}\" cannot be put into a bar code.", nameof(labels));
        }

        OwnFonts.Use();
        using PdfDocument document = new();
        document.Info.Title = "Labels";
        document.Info.Creator = "Coilwright";
        Pen pen = new();
        int at = 0;
        while (at < labels.Count)
        {
            PdfPage page = document.AddPage();
            page.Size = size == PaperSize.A4 ? PdfSharp.PageSize.A4 : PdfSharp.PageSize.Letter;
            using XGraphics on = XGraphics.FromPdfPage(page);
            int rows = (int)((page.Height.Point - 2 * Margin) / height);
            for (int cell = 0; cell < 2 * rows && at < labels.Count; cell++, at++)
            {
                draw(on, pen, labels[at], new XPoint(Margin + cell % 2 * (Width + 6 * Pen.Mm), Margin + cell / 2 * height));
            }
        }

        using MemoryStream stream = new();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }
}
