using System.Globalization;
using Coilwright.Papers.Sheets;
using PdfSharp.Drawing;

namespace Coilwright.Papers.Pdf;

/// <summary>The single parts of a sheet.</summary>
internal sealed partial class SheetLayout
{
    private void Title(TitlePart part)
    {
        Need(40);
        _y += 6;
        Write(part.Text, 13, bold: true);
    }

    private void Curve(CurvePart part)
    {
        Need(PdfCurve.Height + 8);
        PdfCurve.Draw(Page, _pen, part, new XRect(Margin, _y + 4, _width, PdfCurve.Height));
        _y += PdfCurve.Height + 8;
    }

    private void Large(LargePart part)
    {
        (IReadOnlyList<string> Lines, double Size, bool Bold)[] texts =
        [
            Centred(part.Label, 12, true),
            Centred(part.Value, 42, true),
            Centred(part.Note, 9.5, false),
        ];
        Need(texts.Sum(text => text.Lines.Count * text.Size * Line) + 10);
        foreach ((IReadOnlyList<string> lines, double size, bool bold) in texts)
        {
            foreach (string line in lines)
            {
                _y += size * Line;
                Page.DrawString(
                    line,
                    _pen.Font(size, bold),
                    Pen.Ink,
                    new XPoint(Margin + _width / 2, _y - size * 0.25),
                    XStringFormats.BaseLineCenter
                );
            }
        }

        _y += 4;
        Page.DrawLine(new XPen(Pen.InkColour, 0.6), Margin, _y, Margin + _width, _y);
        _y += 6;
    }

    /// <summary>As large as asked for where that fits, in two thirds of it over several lines where not.</summary>
    private (IReadOnlyList<string> Lines, double Size, bool Bold) Centred(string text, double points, bool bold)
    {
        double size = _pen.Fitting(Page, text, points, points * 2 / 3, bold, _width);
        return (Pen.Wrap(Page, text, _pen.Font(size, bold), _width), size, bold);
    }

    private void Figures(FiguresPart part)
    {
        const double Gap = 14;
        double width = (_width - Gap * (part.Columns - 1)) / part.Columns,
            largest = part.Columns > 2 ? 20 : 26;
        foreach (KeyFigure[] row in part.Figures.Chunk(part.Columns))
        {
            FigureCell[] cells = [.. row.Select(figure => Cell(figure, largest, width))];
            double height =
                cells.Max(cell => 2 + cell.Label.Count * 10 + cell.Value.Count * cell.Size * 1.12 + cell.Note.Count * 9 * Line) + 6;
            Need(height);
            for (int column = 0; column < cells.Length; column++)
            {
                double x = Margin + column * (width + Gap),
                    y = Lines(cells[column].Label, 9, 10 / 9.0, false, x, _y + 1);
                y = Lines(cells[column].Value, cells[column].Size, 1.12, true, x, y);
                Lines(cells[column].Note, 9, Line, false, x, y + 1);
                Page.DrawLine(new XPen(Pen.InkColour, 0.4), x, _y + height - 2, x + width, _y + height - 2);
            }

            _y += height;
        }

        _y += 3;
    }

    private FigureCell Cell(KeyFigure figure, double largest, double width)
    {
        double size = _pen.Fitting(Page, figure.Value, largest, 14, true, width);
        return new FigureCell(
            Pen.Wrap(Page, figure.Label, _pen.Font(9), width),
            size,
            Pen.Wrap(Page, figure.Value, _pen.Font(size, bold: true), width),
            figure.Note.Length > 0 ? Pen.Wrap(Page, figure.Note, _pen.Font(9), width) : []
        );
    }

    private double Lines(IReadOnlyList<string> lines, double size, double apart, bool bold, double x, double y)
    {
        foreach (string line in lines)
        {
            y += size * apart;
            Page.DrawString(line, _pen.Font(size, bold), Pen.Ink, x, y - size * 0.14);
        }

        return y;
    }

    private void Caution(CautionPart part)
    {
        IReadOnlyList<string> lines = Cautioned(part.Text, _width);
        Need(Boxed(lines) + 6);
        Box(lines, Margin, _y + 2, _width);
        _y += Boxed(lines) + 6;
    }

    private void Table(TablePart table)
    {
        double[] shares = table.Widths.Count == table.Headings.Count ? [.. table.Widths] : [.. table.Headings.Select(_ => 1.0)];
        double[] widths = [.. shares.Select(share => _width * share / shares.Sum())];
        Need(34);
        Headings(table, widths);
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            int page = _pages.Count;
            Need(Height(row, widths, bold: false));
            if (_pages.Count > page)
            {
                Headings(table, widths);
            }

            Row(row, widths, bold: false);
            Rule(0.4);
        }

        _y += 5;
    }

    private void Headings(TablePart table, double[] widths)
    {
        Row(table.Headings, widths, bold: true);
        Rule(1.2);
    }

    private IReadOnlyList<string>[] Wrapped(IReadOnlyList<string> cells, double[] widths, bool bold) =>
        [.. cells.Select((cell, column) => Pen.Wrap(Page, cell, _pen.Font(9.5, bold), widths[column] - 6))];

    private double Height(IReadOnlyList<string> cells, double[] widths, bool bold) =>
        Wrapped(cells, widths, bold).Max(cell => cell.Count) * 9.5 * Line + 3;

    private void Row(IReadOnlyList<string> cells, double[] widths, bool bold)
    {
        XFont font = _pen.Font(9.5, bold);
        IReadOnlyList<string>[] lines = Wrapped(cells, widths, bold);
        double x = Margin;
        for (int column = 0; column < lines.Length; column++)
        {
            for (int at = 0; at < lines[column].Count; at++)
            {
                Page.DrawString(lines[column][at], font, Pen.Ink, x, _y + 10 + at * 9.5 * Line);
            }

            x += widths[column];
        }

        _y += lines.Max(cell => cell.Count) * 9.5 * Line + 3;
    }

    private void Rule(double thick) => Page.DrawLine(new XPen(Pen.InkColour, thick), Margin, _y, Margin + _width, _y);

    private void Step(StepPart step)
    {
        const double Indent = 34,
            Name = 110;
        double width = _width - Indent - Name;
        IReadOnlyList<string>[] lines = [.. step.Lines.Select(line => Pen.Wrap(Page, line, _pen.Font(9.5), width))],
            cautions = [.. step.Cautions.Select(caution => Cautioned(caution, width))];
        IReadOnlyList<string> name = Pen.Wrap(Page, step.Name, _pen.Font(11, bold: true), Name - 6);
        double height = Math.Max(
            Math.Max(28, name.Count * 14 + 8),
            lines.Sum(line => line.Count) * 9.5 * Line + cautions.Sum(caution => Boxed(caution) + 4) + 6
        );
        Need(height);
        double top = _y,
            x = Margin + Indent + Name,
            y = top + 4;
        Page.DrawString(step.Number.ToString(CultureInfo.InvariantCulture), _pen.Font(20, bold: true), Pen.Ink, Margin, top + 18);
        for (int at = 0; at < name.Count; at++)
        {
            Page.DrawString(name[at], _pen.Font(11, bold: true), Pen.Ink, Margin + Indent, top + 14 + at * 14);
        }

        foreach (string line in lines.SelectMany(line => line))
        {
            y += 9.5 * Line;
            Page.DrawString(line, _pen.Font(9.5), Pen.Ink, x, y - 2);
        }

        foreach (IReadOnlyList<string> caution in cautions)
        {
            Box(caution, x, y + 2, width);
            y += Boxed(caution) + 4;
        }

        _y = top + height;
        Rule(0.6);
        _y += 3;
    }

    private IReadOnlyList<string> Cautioned(string text, double width) => Pen.Wrap(Page, "CAUTION  " + text, _pen.Font(8.5), width - 16);

    private static double Boxed(IReadOnlyList<string> lines) => lines.Count * 8.5 * Line + 6;

    private void Box(IReadOnlyList<string> lines, double x, double y, double width)
    {
        Page.DrawRectangle(new XPen(Pen.InkColour, 1), x, y, width, Boxed(lines));
        Page.DrawRectangle(Pen.Ink, x, y, 6, Boxed(lines));
        for (int at = 0; at < lines.Count; at++)
        {
            Page.DrawString(lines[at], _pen.Font(8.5), Pen.Ink, x + 11, y + (at + 1) * 8.5 * Line);
        }
    }

    private sealed record FigureCell(IReadOnlyList<string> Label, double Size, IReadOnlyList<string> Value, IReadOnlyList<string> Note);
}
