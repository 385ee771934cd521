using Coilwright.Papers.Pdf;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;
using PdfSharp.Drawing;

namespace Coilwright.Papers.Labels;

/// <summary>
/// Tags of baskets and mixes to cut, two columns on A4 or Letter; all words of a tag are on it, made smaller where they are many.
/// </summary>
public static class ProcessTagPdf
{
    private const double Height = 69 * Pen.Mm,
        Edge = 3 * Pen.Mm,
        Square = 24 * Pen.Mm,
        Inner = LabelGrid.Width - 2 * Edge;
    private const double Term = 54,
        Small = 6.5,
        Least = 5;

    /// <summary>The document's bytes.</summary>
    /// <param name="tags">At least one.</param>
    /// <param name="size">The paper.</param>
    /// <exception cref="ArgumentException">A code that cannot be printed, or more words than a tag holds.</exception>
    public static byte[] Render(IReadOnlyList<ProcessTag> tags, PaperSize size = PaperSize.A4) =>
        LabelGrid.Render(tags, tag => tag.Code, Height, size, Draw);

    private static void Draw(XGraphics on, Pen pen, ProcessTag tag, XPoint corner)
    {
        (double left, double y) = (corner.X + Edge, corner.Y);
        on.DrawRectangle(new XPen(Pen.InkColour, 0.3), corner.X, y, LabelGrid.Width, Height - 2 * Pen.Mm);
        PdfCode.Square(on, tag.Code, new XRect(corner.X + LabelGrid.Width - Square - Pen.Mm, y + Pen.Mm, Square, Square));
        double head = y + 3 * Pen.Mm,
            width = LabelGrid.Width - Edge - Square - 2 * Pen.Mm;
        head = Lines(on, pen, tag.Kind, 8, false, new XRect(left, head, width, 0));
        head = Lines(on, pen, tag.Title, pen.Fitting(on, tag.Title, 15, 9, true, width), true, new XRect(left, head, width, 0));
        head = Lines(on, pen, tag.Key.Term, 8, false, new XRect(left, head + 2, width, 0));
        head = Lines(on, pen, tag.Key.Meaning, pen.Fitting(on, tag.Key.Meaning, 15, 9, true, width), true, new XRect(left, head, width, 0));

        IReadOnlyList<string> caution = Pen.Wrap(on, "CAUTION " + tag.Caution, pen.Font(Small), Inner - 12);
        double closing = pen.Fitting(on, Cautions.ClosingLine, Small, Least, false, Inner);
        double foot = y + Height - 4 * Pen.Mm - closing * 1.25,
            box = foot - caution.Count * Small * 1.25 - 6;
        Facts(on, pen, tag, new XRect(left, Math.Max(head, y + Pen.Mm + Square), Inner, box - Math.Max(head, y + Pen.Mm + Square) - 2));
        on.DrawRectangle(new XPen(Pen.InkColour, 0.8), left, box, Inner, foot - box - 1);
        on.DrawRectangle(Pen.Ink, left, box, 4, foot - box - 1);
        Lines(on, pen, "CAUTION " + tag.Caution, Small, false, new XRect(left + 8, box + 1.5, Inner - 12, 0));
        Lines(on, pen, Cautions.ClosingLine, closing, false, new XRect(left, foot, Inner, 0));
    }

    private static void Facts(XGraphics on, Pen pen, ProcessTag tag, XRect room)
    {
        double Need(double points) =>
            tag.Facts.Sum(fact => Pen.Wrap(on, fact.Meaning, pen.Font(points, bold: true), room.Width - Term).Count * points * 1.25);
        double size = 9;
        while (Need(size) > room.Height && size > 4.5)
        {
            size -= 0.5;
        }

        if (Need(size) > room.Height)
        {
            throw new ArgumentException($"The tag of {tag.Title} holds more words than fit.", nameof(tag));
        }

        double y = room.Y;
        foreach ((string term, string meaning) in tag.Facts)
        {
            on.DrawString(term, pen.Font(Math.Min(size, 8)), Pen.Ink, room.X, y + size);
            y = Lines(on, pen, meaning, size, true, new XRect(room.X + Term, y, room.Width - Term, 0));
        }
    }

    /// <summary>Writes a text from a corner on; gives where it ends.</summary>
    private static double Lines(XGraphics on, Pen pen, string text, double points, bool bold, XRect from)
    {
        double y = from.Y;
        foreach (string line in Pen.Wrap(on, text, pen.Font(points, bold), from.Width))
        {
            on.DrawString(line, pen.Font(points, bold), Pen.Ink, from.X, y + points);
            y += points * 1.25;
        }

        return y;
    }
}
