using System.Text.RegularExpressions;
using PdfSharp.Drawing;

namespace Coilwright.Papers.Pdf;

/// <summary>What every PDF draws with. All lengths in points; black and white is enough, copper is an accent only.</summary>
internal sealed partial class Pen
{
    public const double Mm = 72 / 25.4;

    public static readonly XBrush Ink = new XSolidBrush(XColor.FromArgb(0x1b, 0x19, 0x16));
    public static readonly XColor InkColour = XColor.FromArgb(0x1b, 0x19, 0x16);
    public static readonly XColor Copper = XColor.FromArgb(0x9a, 0x4a, 0x17);

    /// <summary>Stands for a blank at which no line ends.</summary>
    private const string Joined = "\u00a0";

    private readonly Dictionary<(double, bool), XFont> _fonts = [];

    public XFont Font(double size, bool bold = false)
    {
        if (!_fonts.TryGetValue((size, bold), out XFont? font))
        {
            font = new XFont(OwnFonts.Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
            _fonts[(size, bold)] = font;
        }

        return font;
    }

    /// <summary>The largest size, in half points, at which a text stands on one line; the smallest one where none does.</summary>
    public double Fitting(XGraphics page, string text, double largest, double smallest, bool bold, double width)
    {
        double size = largest;
        while (size > smallest && page.MeasureString(text, Font(size, bold)).Width > width)
        {
            size -= 0.5;
        }

        return Math.Max(size, smallest);
    }

    /// <summary>Lines that fit a width; a number stays with its unit, and a word longer than a line is cut.</summary>
    public static IReadOnlyList<string> Wrap(XGraphics page, string text, XFont font, double width)
    {
        List<string> lines = [];
        string line = "";
        IEnumerable<string> words = BeforeUnit()
            .Replace(text, Joined)
            .Split(' ')
            .Select(word => word.Replace(Joined, " ", StringComparison.Ordinal));
        foreach (string word in words)
        {
            string rest = word,
                wider = line.Length == 0 ? rest : line + " " + rest;
            if (page.MeasureString(wider, font).Width <= width)
            {
                line = wider;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            while (rest.Length > 1 && page.MeasureString(rest, font).Width > width)
            {
                int fits = rest.Length - 1;
                while (fits > 1 && page.MeasureString(rest[..fits], font).Width > width)
                {
                    fits--;
                }

                lines.Add(rest[..fits]);
                rest = rest[fits..];
            }

            line = rest;
        }

        lines.Add(line);
        return lines;
    }

    [GeneratedRegex("(?<=\\d) (?=(?:°C|%|[kMmµnp]?(?:Ω|Hz|H|F|m|T|G|V|g|s)|gf|rpm|min|h|days|turns|pieces)(?![\\w/]))")]
    private static partial Regex BeforeUnit();
}
