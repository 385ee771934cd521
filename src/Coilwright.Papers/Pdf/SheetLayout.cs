using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Coilwright.Papers.Pdf;

/// <summary>
/// Lays one sheet out over as many pages as it needs, everything on them as large as the scale says; head on the first, foot with page n of
/// m on each.
/// </summary>
internal sealed partial class SheetLayout(PdfDocument document, Sheet sheet, PaperSize size, double scale = 1) : IDisposable
{
    private const double Margin = 14 * Pen.Mm,
        LeastFoot = 17 * Pen.Mm,
        Line = 1.3;

    private readonly Pen _pen = new();
    private readonly List<XGraphics> _pages = [];
    private double _y,
        _width,
        _bottom;

    /// <summary>Pages it took.</summary>
    public int Pages => _pages.Count;

    private XGraphics Page => _pages[^1];

    public void Draw()
    {
        NewPage();
        Head();
        foreach (SheetPart part in sheet.Parts)
        {
            Draw(part);
        }

        Feet();
    }

    private void Draw(SheetPart part)
    {
        switch (part)
        {
            case TitlePart title:
                Title(title);
                break;
            case TextPart text:
                Write(text.Text, 9.5);
                break;
            case LargePart large:
                Large(large);
                break;
            case FiguresPart figures:
                Figures(figures);
                break;
            case CautionPart caution:
                Caution(caution);
                break;
            case TablePart table:
                Table(table);
                break;
            case StepPart step:
                Step(step);
                break;
            case CurvePart curve:
                Curve(curve);
                break;
            default:
                throw new InvalidOperationException("This part cannot be drawn yet.");
        }
    }

    public void Dispose() => _pages.ForEach(page => page.Dispose());

    private void NewPage()
    {
        PdfPage page = document.AddPage();
        page.Size = size == PaperSize.A4 ? PdfSharp.PageSize.A4 : PdfSharp.PageSize.Letter;
        XGraphics graphics = XGraphics.FromPdfPage(page);
        graphics.ScaleTransform(scale);
        _pages.Add(graphics);
        (_y, _width, _bottom) = (Margin, page.Width.Point / scale - 2 * Margin, page.Height.Point / scale - Margin);
        _bottom -= Math.Max(LeastFoot, FootLines(Page, 99, 99).Count * 11 + 10);
    }

    private void Need(double height)
    {
        if (_y + height > _bottom && _y > Margin + 1)
        {
            NewPage();
        }
    }

    private void Head()
    {
        double begun = _y,
            right = Margin + _width;
        foreach ((string term, string meaning) in sheet.Facts)
        {
            Page.DrawString(term, _pen.Font(8.5), Pen.Ink, right - 175, _y + 12);
            foreach (string line in Pen.Wrap(Page, meaning, _pen.Font(8.5, bold: true), 115))
            {
                _y += 12;
                Page.DrawString(line, _pen.Font(8.5, bold: true), Pen.Ink, right - 115, _y);
            }
        }

        double facts = _y;
        _y = begun;
        Write(sheet.Subject, 20, bold: true, width: _width - 190);
        Write(sheet.Kind, 13, width: _width - 190);
        _y = Math.Max(_y, facts) + 5;
        Page.DrawLine(new XPen(Pen.Copper, 2), Margin, _y, right, _y);
        _y += 8;
    }

    private void Write(string text, double points, bool bold = false, double? width = null)
    {
        XFont font = _pen.Font(points, bold);
        foreach (string line in Pen.Wrap(Page, text, font, width ?? _width))
        {
            Need(points * Line);
            _y += points * Line;
            Page.DrawString(line, font, Pen.Ink, Margin, _y - points * 0.25);
        }
    }

    private void Feet()
    {
        for (int page = 0; page < _pages.Count; page++)
        {
            double y = _bottom + 6;
            XGraphics on = _pages[page];
            on.DrawLine(new XPen(Pen.Copper, 2), Margin, y, Margin + _width, y);
            foreach (string line in FootLines(on, page + 1, _pages.Count))
            {
                y += 11;
                on.DrawString(line, _pen.Font(8), Pen.Ink, Margin, y);
            }

            if (sheet.Code.Length > 0)
            {
                PdfCode.Bars(on, sheet.Code, new XRect(Margin + _width - 165, _bottom + 11, 165, 26));
            }
        }
    }

    private List<string> FootLines(XGraphics on, int page, int pages)
    {
        double text = _width - (sheet.Code.Length > 0 ? 170 : 0);
        string place = string.Create(CultureInfo.InvariantCulture, $"{sheet.Where}, page {page} of {pages}");
        return [.. Pen.Wrap(on, Cautions.ClosingLine, _pen.Font(8), text), .. Pen.Wrap(on, place, _pen.Font(8), text)];
    }
}
