using System.Globalization;
using System.Text;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Figures;

/// <summary>
/// A small plot as SVG: axes with units, curves told apart by stroke and named where they run, marks with whiskers. Black and white is
/// enough to read it.
/// </summary>
internal sealed class PlotSheet
{
    private const int Width = 720,
        Left = 72,
        Right = 700,
        Head = 16;

    /// <summary>Room for a letter and a line where a phone shows the figure with larger letters.</summary>
    private const double WidestLetter = 12,
        LineOfPhone = 22;

    private static readonly double[] s_parts = [0.72, 0.28, 0.5, 0.9, 0.1];
    private static readonly string[] s_strokes = ["", "9 5", "2 4", "12 4 2 4"];
    private readonly StringBuilder _body = new();
    private readonly List<(double X, double Y)> _named = [];
    private readonly PlotAxis _x,
        _y;
    private readonly string _id;

    /// <summary>How high the plot is, without its axes' words.</summary>
    private readonly int _height;

    public PlotSheet(string id, PlotAxis x, PlotAxis y, int height = 230) => (_id, _x, _y, _height) = (id, x, y, height);

    /// <summary>A curve; the first four differ by stroke.</summary>
    /// <param name="name">Its name, written beside it; empty for none.</param>
    /// <param name="points">Its points.</param>
    /// <param name="index">Which stroke.</param>
    public void Curve(string name, IReadOnlyList<(double X, double Y)> points, int index = 0)
    {
        string path = string.Concat(
            points.Select(
                (point, i) => string.Create(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{X(point.X):0.#} {Y(point.Y):0.#}")
            )
        );
        Write($"""<path class="curve" clip-path="url(#{_id}-plot)" d="{path}" {Stroke(index)}/>""");
        if (name.Length > 0 && points.Count > 0)
        {
            Name(name, points, index);
        }
    }

    /// <summary>
    /// The name of a curve, at the first of five places along it where no other name stands, else under one of them at the foot of the
    /// plot.
    /// </summary>
    private void Name(string name, IReadOnlyList<(double X, double Y)> points, int index)
    {
        (double X, double Y)[] places =
        [
            .. s_parts
                .Select(part => points[(int)Math.Round(part * (points.Count - 1))])
                .Select(point => (X(point.X), Math.Clamp(Y(point.Y) - 7, 14, _height - 6))),
        ];
        (double x, double y) = places
            .Concat(places.Select(place => (place.X, _height - 8.0)))
            .Cast<(double X, double Y)?>()
            .FirstOrDefault(place => _named.All(other => Apart(other, place!.Value, WidestLetter / 2 * name.Length)), places[0])!
            .Value;
        _named.Add((x, y));
        double half = 3.6 * name.Length,
            middle = Math.Clamp(x, Left + half, Math.Max(Left + half, Right - half));
        Write(
            $"""<text class="name" x="{middle:0.#}" y="{y:0.#}" text-anchor="middle" font-size="13" """
                + $"""fill="var({(index % 2 == 0 ? "--copper" : "--ink")}, #1d1a16)" font-weight="700" """
                + $"""stroke="var(--sheet, #fff)" stroke-width="4" paint-order="stroke">{E(name)}</text>"""
        );
    }

    private static bool Apart((double X, double Y) one, (double X, double Y) other, double wide) =>
        Math.Abs(one.Y - other.Y) > LineOfPhone || Math.Abs(one.X - other.X) > wide;

    /// <summary>Something of its own at a place of the plot.</summary>
    /// <param name="x">Where along the page.</param>
    /// <param name="y">Where up the page.</param>
    /// <param name="markup">Its drawing, from where it stands in the sheet.</param>
    public void Drawn(double x, double y, Func<double, double, string> markup) => _body.Append(markup(X(x), Y(y)));

    /// <summary>A band between two edges over the same places.</summary>
    public void Band(IReadOnlyList<(double X, double Low, double High)> edges)
    {
        IEnumerable<(double X, double Y)> round = edges
            .Select(edge => (edge.X, edge.High))
            .Concat(edges.Reverse().Select(edge => (edge.X, edge.Low)));
        string path = string.Concat(
            round.Select(
                (point, i) => string.Create(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{X(point.X):0.#} {Y(point.Y):0.#}")
            )
        );
        Write(
            $"""<path class="band" clip-path="url(#{_id}-plot)" d="{path}Z" fill="var(--copper, #b4622d)" fill-opacity="0.18" """
                + $"""stroke="var(--copper, #b4622d)" stroke-opacity="0.35" stroke-width="0.8"/>"""
        );
    }

    /// <summary>A dot on a curve.</summary>
    public void Dot(double x, double y) =>
        Write($"""<circle class="peak" cx="{X(x):0.#}" cy="{Y(y):0.#}" r="5" fill="var(--copper, #b4622d)"/>""");

    /// <summary>Words beside a curve.</summary>
    /// <param name="x">Where along the page.</param>
    /// <param name="y">Where up the page.</param>
    /// <param name="words">What they say.</param>
    /// <param name="shift">How far the words stand from there, in the drawing.</param>
    /// <param name="anchor">"start", "middle" or "end".</param>
    /// <param name="copper">True for the words of what the figure is about.</param>
    public void Label(double x, double y, string words, (double X, double Y) shift, string anchor, bool copper = false) =>
        Write(
            $"""<text x="{X(x) + shift.X:0.#}" y="{Math.Max(14, Y(y) + shift.Y):0.#}" text-anchor="{anchor}" font-size="14" """
                + $"""fill="var({(copper ? "--copper" : "--ink")}, #1d1a16)" font-weight="{(copper ? 700 : 400)}" """
                + $"""stroke="var(--sheet, #fff)" stroke-width="4" paint-order="stroke">{E(words)}</text>"""
        );

    /// <summary>A thin line from a point to the words about it.</summary>
    /// <param name="x">Where along the page.</param>
    /// <param name="y">Where up the page.</param>
    /// <param name="shift">How far its other end stands from there, in the drawing.</param>
    public void Leader(double x, double y, (double X, double Y) shift) =>
        Write(
            $"""<path d="M{X(x):0.#} {Y(y):0.#}l{shift.X:0.#} {shift.Y:0.#}" stroke="var(--ink, #1d1a16)" stroke-width="1" """
                + $"""fill="none"/>"""
        );

    /// <summary>How far up the drawing a value stands from the top of the plot.</summary>
    public double FromTop(double y) => Y(y);

    /// <summary>Which part of the drawing's width the plot takes.</summary>
    public static (double From, double To) Across => ((double)Left / Width, (double)Right / Width);

    /// <summary>A ring with a whisker from low to high.</summary>
    public void Mark(double x, double y, double low, double high, string label)
    {
        double at = X(x);
        Write(
            $"""<path class="span" d="M{at:0.#} {Y(low):0.#}V{Y(high):0.#}M{at - 4:0.#} {Y(low):0.#}h8M{at - 4:0.#} {Y(high):0.#}h8" """
                + $"""stroke="var(--ink, #1d1a16)" stroke-width="1.5"/><circle class="mark" cx="{at:0.#}" cy="{Y(y):0.#}" r="4.5" """
                + $"""fill="var(--paper, #fff)" stroke="var(--ink, #1d1a16)" stroke-width="2"/>"""
        );
        if (label.Length > 0)
        {
            double above = Math.Max(14, Math.Min(Y(low), Y(high)) - 6);
            _named.Add((at, above));
            Write(
                $"""<text x="{at:0.#}" y="{above:0.#}" text-anchor="middle" font-size="13" """
                    + $"""fill="var(--ink, #1d1a16)" stroke="var(--paper, #faf6ee)" stroke-width="4" """
                    + $"""paint-order="stroke">{E(label)}</text>"""
            );
        }
    }

    /// <summary>A line across the whole plot with a word at its right end.</summary>
    /// <param name="y">Where.</param>
    /// <param name="words">What it is; empty for none.</param>
    /// <param name="dashes">Its dashes; empty for a whole line.</param>
    /// <param name="wordsAtLeft">True for words at its left end.</param>
    public void Line(double y, string words, string dashes, bool wordsAtLeft = false)
    {
        Write(
            $"""<path class="limit" d="M{Left} {Y(y):0.#}H{Right}" fill="none" stroke="var(--ink, #1d1a16)" """
                + $"""stroke-width="1.5"{(dashes.Length > 0 ? $" stroke-dasharray=\"{dashes}\"" : "")}/>"""
        );
        if (words.Length > 0)
        {
            Named(words, Y(y) - 4, wordsAtLeft);
        }
    }

    /// <summary>The name of a line at its end, or farther in where another name stands there.</summary>
    private void Named(string words, double y, bool atLeft)
    {
        double half = WidestLetter / 2 * words.Length,
            x = atLeft ? Left + 4 : Right - 4,
            middle = atLeft ? x + half : x - half;
        while (_named.Any(other => !Apart(other, (middle, y), 2 * half)) && middle is > Left and < Right)
        {
            x += atLeft ? 20 : -20;
            middle += atLeft ? 20 : -20;
        }

        _named.Add((middle, y));
        Write(
            $"""<text class="name" x="{x:0.#}" y="{y:0.#}" text-anchor="{(atLeft ? "start" : "end")}" """
                + $"""font-size="12" fill="var(--ink, #1d1a16)" """
                + $"""stroke="var(--paper, #faf6ee)" stroke-width="3" paint-order="stroke">{E(words)}</text>"""
        );
    }

    /// <summary>A thin line through points, and a dot on each when there is room for them.</summary>
    public void Run(IReadOnlyList<(double X, double Y)> points, bool dots)
    {
        string path = string.Concat(
            points.Select(
                (point, i) => string.Create(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{X(point.X):0.#} {Y(point.Y):0.#}")
            )
        );
        Write(
            $"""<path class="run" clip-path="url(#{_id}-plot)" d="{path}" fill="none" stroke="var(--copper, #b4622d)" """
                + $"""stroke-width="1.2" stroke-linejoin="round"/>"""
        );
        foreach ((double x, double y) in dots ? points : [])
        {
            Write($"""<circle cx="{X(x):0.#}" cy="{Y(y):0.#}" r="2.6" fill="var(--copper, #b4622d)"/>""");
        }
    }

    /// <summary>A mark of its own shape with a letter, and what it says on pointing at it.</summary>
    /// <param name="x">Where along the page.</param>
    /// <param name="y">Where up the page; beyond the axis it stands at its end.</param>
    /// <param name="shape">0 a triangle, 1 a square, 2 a diamond, 3 a ring, 4 a cross.</param>
    /// <param name="letter">Its letter; empty for none.</param>
    /// <param name="words">What it says.</param>
    /// <param name="small">True for a mark that follows one of its kind.</param>
    public void Signal(double x, double y, int shape, string letter, string words, bool small = false)
    {
        string at = string.Create(
            CultureInfo.InvariantCulture,
            $"translate({X(x):0.#} {Math.Clamp(Y(y), 6, _height - 6):0.#}){(small ? " scale(0.5)" : "")}"
        );
        string drawn = shape switch
        {
            0 => "M0 -7.5L6.5 4H-6.5Z",
            1 => "M-5.5 -5.5H5.5V5.5H-5.5Z",
            2 => "M0 -7.5L7.5 0L0 7.5L-7.5 0Z",
            3 => "M-6 0A6 6 0 1 0 6 0A6 6 0 1 0 -6 0Z",
            _ => "M-4.5 -4.5L4.5 4.5M-4.5 4.5L4.5 -4.5",
        };
        Write($"""<g class="signal" transform="{at}"><title>{E(words)}</title>""");
        Write($"""<path d="{drawn}" fill="none" stroke="var(--ink, #1d1a16)" stroke-width="2.2"/>""");
        if (letter.Length > 0)
        {
            Write(
                $"""<text x="0" y="-11" text-anchor="middle" font-size="12" font-weight="700" fill="var(--ink, #1d1a16)" """
                    + $"""stroke="var(--paper, #faf6ee)" stroke-width="3" paint-order="stroke">{E(letter)}</text>"""
            );
        }

        Write($"</g>");
    }

    /// <summary>A bar from zero.</summary>
    public void Bar(double x, double y, double widthX)
    {
        double left = X(x - widthX / 2),
            top = Math.Min(Y(0), Y(y));
        Write(
            $"""<rect class="bar" x="{left:0.#}" y="{top:0.#}" width="{X(x + widthX / 2) - left:0.#}" """
                + $"""height="{Math.Abs(Y(y) - Y(0)):0.#}" fill="var(--copper, #b4622d)" fill-opacity="0.35" stroke="var(--copper, """
                + $"""#b4622d)" stroke-width="1.5"/>"""
        );
    }

    /// <summary>The whole figure, naming itself to a screen reader.</summary>
    /// <param name="name">Its class.</param>
    /// <param name="title">What it is.</param>
    /// <param name="description">What it shows.</param>
    /// <param name="role">"group" where something in it can be followed.</param>
    public string Svg(string name, string title, string description, string role = "img")
    {
        StringBuilder svg = new();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<svg xmlns="http://www.w3.org/2000/svg" class="figure {name}" role="{role}" aria-labelledby="{_id}-title {_id}-desc" """
                + $"""viewBox="0 0 {Width} {Head + _height + 50}" font-family="system-ui, sans-serif" font-size="14" """
                + $"""color="var(--ink, #1d1a16)">"""
        );
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<title id="{_id}-title">{E(title)}</title><desc id="{_id}-desc">{E(description)}</desc>"""
        );
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<g transform="translate(0 {Head})"><defs><clipPath id="{_id}-plot"><rect x="{Left}" y="0" width="{Right - Left}" """
                + $"""height="{_height}"/></clipPath></defs>"""
        );
        return svg.Append(Axes()).Append(_body).Append("</g></svg>").ToString();
    }

    private string Axes()
    {
        StringBuilder svg = new("""<g stroke="var(--ink, #1d1a16)" stroke-width="1" fill="none">""");
        foreach (double tick in _x.Ticks)
        {
            svg.Append(CultureInfo.InvariantCulture, $"""<path d="M{X(tick):0.#} 0V{_height}" opacity="0.15"/>""");
        }

        foreach (double tick in _y.Ticks)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"""<path d="M{Left} {Y(tick):0.#}H{Right}" opacity="{(Math.Abs(tick) < 1e-12 ? 0.7 : 0.15)}"/>"""
            );
        }

        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<rect x="{Left}" y="0" width="{Right - Left}" height="{_height}"/></g><g fill="var(--ink, #1d1a16)" font-size="13">"""
        );
        foreach (double tick in _x.Ticks)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"""<text class="tick" x="{X(tick):0.#}" y="{_height + 18}" text-anchor="middle">{_x.Number(tick)}</text>"""
            );
        }

        foreach (double tick in _y.Ticks)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"""<text class="tick" x="{Left - 8}" y="{Y(tick) + 4.5:0.#}" text-anchor="end">{_y.Number(tick)}</text>"""
            );
        }

        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<text class="axis" x="{(Left + Right) / 2}" y="{_height + 42}" text-anchor="middle" font-size="14">{E(_x.Label)}</text>"""
        );
        return svg.Append(
                CultureInfo.InvariantCulture,
                $"""<text class="axis" transform="translate(16 {_height / 2}) rotate(-90)" text-anchor="middle" """
                    + $"""font-size="14">{E(_y.Label)}</text></g>"""
            )
            .ToString();
    }

    private double X(double value) => Left + (Right - Left) * _x.Part(value);

    private double Y(double value) => _height * (1 - _y.Part(value));

    private static string Stroke(int index) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"""fill="none" stroke="{(index % 2 == 0 ? "var(--copper, #b4622d)" : "var(--ink, #1d1a16)")}" stroke-width="2.5" """
                + $"""stroke-linejoin="round"{(s_strokes[index % 4].Length > 0 ? $" stroke-dasharray=\"{s_strokes[index % 4]}\"" : "")}"""
        );

    private void Write(InvariantText text) => _body.Append(text.ToText());
}
