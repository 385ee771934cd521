using Coilwright.Papers.Sheets;
using PdfSharp.Pdf;

namespace Coilwright.Papers.Pdf;

/// <summary>Sheets as a PDF: fonts embedded, nothing from outside, A4 or Letter, legible in black and white.</summary>
public static class SheetPdf
{
    /// <summary>A sheet that runs over by a few lines is set so much smaller: body text of 9.5 points is then 8.7.</summary>
    private const double Smaller = 0.92;

    /// <summary>The document's bytes.</summary>
    /// <param name="sheets">At least one sheet; each begins on a page of its own.</param>
    /// <param name="size">The paper.</param>
    public static byte[] Render(IReadOnlyList<Sheet> sheets, PaperSize size = PaperSize.A4)
    {
        ArgumentOutOfRangeException.ThrowIfZero(sheets.Count, nameof(sheets));
        OwnFonts.Use();
        using PdfDocument document = new();
        document.Info.Title = $"{sheets[0].Kind}: {sheets[0].Subject}";
        document.Info.Creator = "Coilwright";
        foreach (Sheet sheet in sheets)
        {
            using SheetLayout layout = new(document, sheet, size, ScaleOf(sheet, size));
            layout.Draw();
        }

        using MemoryStream stream = new();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    /// <summary>Full size, unless a little less spares a page.</summary>
    private static double ScaleOf(Sheet sheet, PaperSize size)
    {
        int full = PagesAt(1, sheet, size);
        return full > 1 && PagesAt(Smaller, sheet, size) < full ? Smaller : 1;
    }

    private static int PagesAt(double scale, Sheet sheet, PaperSize size)
    {
        using PdfDocument tried = new();
        using SheetLayout layout = new(tried, sheet, size, scale);
        layout.Draw();
        return layout.Pages;
    }
}
