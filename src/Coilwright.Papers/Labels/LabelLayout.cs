using Coilwright.Papers.Figures;
using Coilwright.Papers.Pdf;
using Coilwright.Workshop.SetUp;
using PdfSharp.Drawing;

namespace Coilwright.Papers.Labels;

/// <summary>
/// Where everything stands on a label of one size: the code, the title whole, as many lines as there is room for, in words shortened where
/// they must be, and the caution of magnets whole. Nothing is clipped.
/// </summary>
public sealed class LabelLayout
{
    /// <summary>What label printers leave free at the edge; common practice, no source.</summary>
    private const double Edge = 1.5 * Pen.Mm;

    private const double Gap = 1 * Pen.Mm,
        Apart = 1.18,
        LeastTitle = 4.5,
        LargestTitle = 18,
        LeastLine = 5,
        LargestLine = 9,
        LargestCaution = 6,
        LeastCaution = 4.5;

    private readonly List<LabelText> _texts = [];
    private readonly Pen _pen = new();
    private readonly XGraphics _measure;
    private XRect _room;
    private string? _why;

    private LabelLayout(PieceLabel label, LabelSize size, XGraphics measure)
    {
        (Label, Size, _measure) = (label, size, measure);
        double width = size.WidthMm * Pen.Mm - 2 * Edge,
            height = size.HeightMm * Pen.Mm - 2 * Edge;
        bool beside = size.WidthMm >= 1.4 * size.HeightMm;
        double square = beside ? Math.Min(height, 0.42 * width) : 0.5 * height;
        Square = beside
            ? new XRect(Edge + width - square, Edge + (height - square) / 2, square, square)
            : new XRect(Edge + (width - square) / 2, Edge, square, square);
        _room = beside ? new XRect(Edge, Edge, width - square - Gap, height) : new XRect(Edge, Edge + square, width, height - square);
    }

    /// <summary>What is printed.</summary>
    public PieceLabel Label { get; }

    /// <summary>How large.</summary>
    public LabelSize Size { get; }

    /// <summary>Where the QR code stands, its quiet zone included, points.</summary>
    internal XRect Square { get; }

    /// <summary>The lines, from the title down.</summary>
    public IReadOnlyList<LabelText> Texts => _texts;

    /// <summary>Lays a label out.</summary>
    /// <exception cref="ArgumentException">A code that no code can hold, or a title or caution too long for this size.</exception>
    public static LabelLayout Of(PieceLabel label, LabelSize size)
    {
        LabelLayout layout = Try(label, size);
        return layout._why is { } why ? throw new ArgumentException(why, nameof(label)) : layout;
    }

    /// <summary>Why a label cannot be printed in a size, for people; null where it can.</summary>
    public static string? Refusal(PieceLabel label, LabelSize size) => Try(label, size)._why;

    private static LabelLayout Try(PieceLabel label, LabelSize size)
    {
        OwnFonts.Use();
        using XGraphics measure = XGraphics.CreateMeasureContext(
            new XSize(size.WidthMm * Pen.Mm, size.HeightMm * Pen.Mm),
            XGraphicsUnit.Point,
            XPageDirection.Downwards
        );
        LabelLayout layout = new(label, size, measure);
        layout.Place();
        return layout;
    }

    private void Place()
    {
        if (Label.Code.Length is 0 or > BarCode.Longest || Label.Code.Any(letter => letter is < ' ' or > '~'))
        {
            _why = $"\"{Label.Code}\" cannot be put into a code";
            return;
        }

        if (Label.HasMagnets)
        {
            Caution();
        }

        Title();
        foreach (string line in Label.Lines.Where(line => line.Length > 0))
        {
            Line(line);
        }
    }

    /// <summary>
    /// The caution at the foot: with the closing line, without it, or in its short form, by what leaves half of the room.
    /// </summary>
    private void Caution()
    {
        string[] forms =
        [
            $"CAUTION {Cautions.MagnetsOnLabel} {Cautions.ClosingLine}",
            $"CAUTION {Cautions.MagnetsOnLabel}",
            $"CAUTION {Cautions.MagnetsOnSmallLabel}",
        ];
        (string text, double size) = forms
            .SelectMany(form => Sizes(LargestCaution, LeastCaution).Select(points => (form, points)))
            .FirstOrDefault(one => Height(one.form, one.points, false) <= _room.Height * 0.5);
        if (text is null)
        {
            TooSmall("the caution of its magnets");
            return;
        }

        double top = _room.Bottom - Height(text, size, false);
        Write(text, size, bold: false, top);
        _room.Height = top - _room.Y - 1;
    }

    private void Title()
    {
        double most = Label.Lines.Count > 0 ? Math.Max(_room.Height * 0.5, LeastTitle * Apart) : _room.Height;
        double? onOne = Sizes(LargestTitle, 7)
            .Cast<double?>()
            .FirstOrDefault(points => Count(Label.Title, points!.Value, true) == 1 && points.Value * Apart <= most);
        double? onMore = Sizes(7, LeastTitle)
            .Cast<double?>()
            .FirstOrDefault(points => Height(Label.Title, points!.Value, true) <= _room.Height);
        if ((onOne ?? onMore) is not { } size)
        {
            TooSmall($"\"{Label.Title}\"");
            return;
        }

        Write(Label.Title, size, bold: true, _room.Y);
        Take(Height(Label.Title, size, true));
    }

    /// <summary>One more line while there is room for it.</summary>
    private void Line(string text)
    {
        double size = _pen.Fitting(
            _measure,
            text,
            Math.Min(LargestLine, Math.Max(LeastLine, _room.Height / 3)),
            LeastLine,
            false,
            _room.Width
        );
        if (_room.Height < size * Apart)
        {
            return;
        }

        string shown = ShortWords.Fit(text, tried => Wide(tried, size, false) <= _room.Width);
        if (shown.Length > 0)
        {
            Write(shown, size, bold: false, _room.Y);
            Take(size * Apart);
        }
    }

    private void Take(double height) => _room = new XRect(_room.X, _room.Y + height, _room.Width, Math.Max(0, _room.Height - height));

    private void Write(string text, double size, bool bold, double top)
    {
        foreach (string line in Pen.Wrap(_measure, text, _pen.Font(size, bold), _room.Width))
        {
            double width = Wide(line, size, bold);
            _texts.Add(new LabelText(line, _room.X, top + size * 0.93, size, bold, width));
            top += size * Apart;
        }
    }

    private double Wide(string text, double size, bool bold) => _measure.MeasureString(text, _pen.Font(size, bold)).Width;

    private int Count(string text, double size, bool bold) => Pen.Wrap(_measure, text, _pen.Font(size, bold), _room.Width).Count;

    private double Height(string text, double size, bool bold) => Count(text, size, bold) * size * Apart;

    private void TooSmall(string what) => _why ??= $"a label of {Size.Words} has no room for {what}: choose a larger one";

    private static IEnumerable<double> Sizes(double largest, double least)
    {
        for (double size = largest; size >= least; size -= 0.5)
        {
            yield return size;
        }
    }
}
