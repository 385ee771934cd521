using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Coilwright.Papers.Pdf;

/// <summary>Lays one sheet out over as many pages as it needs; head on the first, foot with page n of m on each.</summary>
internal sealed class SheetLayout(PdfDocument document, Sheet sheet, PaperSize size) : IDisposable
{
    private const double Margin = 14 * Pen.Mm, FootHeight = 17 * Pen.Mm, Line = 1.3;

    private readonly Pen _pen = new();
    private readonly List<XGraphics> _pages = [];
    private double _y, _width, _bottom;

    private XGraphics Page => _pages[^1];

    public void Draw()
    {
        NewPage();
        Head();
        foreach (SheetPart part in sheet.Parts)
        {
            switch (part)
            {
                case TitlePart title:
                    Need(40);
                    _y += 6;
                    Write(title.Text, 13, bold: true);
                    break;
                case TextPart text:
                    Write(text.Text, 9.5);
                    break;
                case LargePart large:
                    Large(large);
                    break;
                case TablePart table:
                    Table(table);
                    break;
                case StepPart step:
                    Step(step);
                    break;
                case CurvePart curve:
                    Need(PdfCurve.Height + 8);
                    PdfCurve.Draw(Page, _pen, curve, new XRect(Margin, _y + 4, _width, PdfCurve.Height));
                    _y += PdfCurve.Height + 8;
                    break;
                default:
                    throw new InvalidOperationException("This part cannot be drawn yet.");
            }
        }

        Feet();
    }

    public void Dispose() => _pages.ForEach(page => page.Dispose());

    private void NewPage()
    {
        PdfPage page = document.AddPage();
        page.Size = size == PaperSize.A4 ? PdfSharp.PageSize.A4 : PdfSharp.PageSize.Letter;
        _pages.Add(XGraphics.FromPdfPage(page));
        (_y, _width, _bottom) = (Margin, page.Width.Point - 2 * Margin, page.Height.Point - Margin - FootHeight);
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
        double begun = _y, right = Margin + _width;
        foreach ((string term, string meaning) in sheet.Facts)
        {
            _y += 12;
            Page.DrawString(term, _pen.Font(8.5), Pen.Ink, right - 165, _y);
            Page.DrawString(meaning, _pen.Font(8.5, bold: true), Pen.Ink, right - 110, _y);
        }

        double facts = _y;
        _y = begun;
        Write(sheet.Subject, 20, bold: true, width: _width - 180);
        Write(sheet.Kind, 13, width: _width - 180);
        _y = Math.Max(_y, facts) + 5;
        Page.DrawLine(new XPen(Pen.Copper, 2), Margin, _y, right, _y);
        _y += 8;
    }

    private void Large(LargePart part)
    {
        Need(90);
        Centre(part.Label, 12, true);
        Centre(part.Value, 42, true);
        Centre(part.Note, 9.5, false);
        _y += 4;
        Page.DrawLine(new XPen(Pen.InkColour, 0.6), Margin, _y, Margin + _width, _y);
        _y += 6;
    }

    private void Centre(string text, double points, bool bold)
    {
        _y += points * Line;
        Page.DrawString(text, _pen.Font(points, bold), Pen.Ink, new XPoint(Margin + _width / 2, _y - points * 0.25), XStringFormats.BaseLineCenter);
    }

    private void Table(TablePart table)
    {
        double[] shares = table.Widths.Count == table.Headings.Count ? [.. table.Widths] : [.. table.Headings.Select(_ => 1.0)];
        double[] widths = [.. shares.Select(share => _width * share / shares.Sum())];
        Need(34);
        Row(table.Headings, widths, bold: true);
        Rule(1.2);
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            Row(row, widths, bold: false);
            Rule(0.4);
        }

        _y += 5;
    }

    private void Row(IReadOnlyList<string> cells, double[] widths, bool bold)
    {
        XFont font = _pen.Font(9.5, bold);
        IReadOnlyList<string>[] lines = [.. cells.Select((cell, column) => Pen.Wrap(Page, cell, font, widths[column] - 6))];
        double height = lines.Max(cell => cell.Count) * 9.5 * Line + 3;
        Need(height);
        double x = Margin;
        for (int column = 0; column < lines.Length; column++)
        {
            for (int at = 0; at < lines[column].Count; at++)
            {
                Page.DrawString(lines[column][at], font, Pen.Ink, x, _y + 10 + at * 9.5 * Line);
            }

            x += widths[column];
        }

        _y += height;
    }

    private void Rule(double thick) => Page.DrawLine(new XPen(Pen.InkColour, thick), Margin, _y, Margin + _width, _y);

    private void Step(StepPart step)
    {
        XFont text = _pen.Font(9.5), small = _pen.Font(8.5);
        const double Indent = 34;
        double width = _width - Indent - 110;
        IReadOnlyList<string>[] lines = [.. step.Lines.Select(line => Pen.Wrap(Page, line, text, width))], cautions = [.. step.Cautions.Select(caution => Pen.Wrap(Page, "CAUTION  " + caution, small, width - 16))];
        double height = Math.Max(28, lines.Sum(line => line.Count) * 9.5 * Line + cautions.Sum(caution => caution.Count * 8.5 * Line + 10) + 8);
        Need(height);
        double top = _y, x = Margin + Indent + 110;
        Page.DrawString(step.Number.ToString(CultureInfo.InvariantCulture), _pen.Font(20, bold: true), Pen.Ink, Margin, top + 18);
        Page.DrawString(step.Name, _pen.Font(11, bold: true), Pen.Ink, Margin + Indent, top + 14);
        double y = top + 4;
        foreach (string line in lines.SelectMany(line => line))
        {
            y += 9.5 * Line;
            Page.DrawString(line, text, Pen.Ink, x, y - 2);
        }

        foreach (IReadOnlyList<string> caution in cautions)
        {
            double boxed = caution.Count * 8.5 * Line + 6;
            Page.DrawRectangle(new XPen(Pen.InkColour, 1), x, y + 2, width, boxed);
            Page.DrawRectangle(Pen.Ink, x, y + 2, 6, boxed);
            for (int at = 0; at < caution.Count; at++)
            {
                Page.DrawString(caution[at], small, Pen.Ink, x + 11, y + 2 + (at + 1) * 8.5 * Line);
            }

            y += boxed + 4;
        }

        _y = top + height;
        Rule(0.6);
        _y += 3;
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
            double text = _width - (sheet.Code.Length > 0 ? 170 : 0);
            string place = string.Create(CultureInfo.InvariantCulture, $"{sheet.Where}, page {page + 1} of {_pages.Count}");
            foreach (string line in Pen.Wrap(on, Cautions.ClosingLine, _pen.Font(8), text).Concat(Pen.Wrap(on, place, _pen.Font(8), text)))
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
}
