using System.Globalization;
using System.Text;
using Coilwright.Physics.Circuit;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Figures;

/// <summary>
/// Responses overlaid: gain in dB against frequency on a log axis from 20 Hz to 20 kHz, each named beside its peak.
/// </summary>
/// <remarks>
/// Curves differ by stroke and by the shape of their peak mark, so that black and white is enough. Two are copper, two ink; more repeat the
/// strokes with a thinner line.
/// </remarks>
public static class ResponseFigure
{
    private const double FromHz = 20,
        ToHz = 20_000;
    private const int Width = 720,
        Left = 64,
        Right = 700,
        PlotHeight = 300,
        NameRow = 17;
    private static readonly string[] s_strokes = ["", "9 5", "2 4", "12 4 2 4"];
    private static readonly string[] s_strokeWords = ["solid", "dashed", "dotted", "dash and dot"];
    private static readonly double[] s_labelledHz = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000];

    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="curves">Name and response of each curve; points outside 20 Hz to 20 kHz are left out, a silent response is named but
    /// not drawn.</param>
    /// <param name="peaks">The exact peak of each curve, null where it has none; without this list the highest drawn point above 0 dB
    /// stands for it.</param>
    /// <param name="title">Title of the figure.</param>
    /// <param name="id">Prefix of the element ids, unique in the page.</param>
    public static string Svg(
        IReadOnlyList<(string Label, Response Curve)> curves,
        IReadOnlyList<ResonancePeak?>? peaks = null,
        string title = "Response",
        string id = "response"
    )
    {
        if (peaks is not null && peaks.Count != curves.Count)
        {
            throw new ArgumentException("One peak, or null, for each curve.", nameof(peaks));
        }

        Track[] tracks =
        [
            .. curves.Select((curve, index) => TrackOf(curve.Label, curve.Curve, peaks is null ? null : (true, peaks[index]), index)),
        ];
        Frame frame = Frame.Around(tracks, 16);
        StringBuilder svg = new();
        string description = string.Join(" ", tracks.Select(track => $"{track.Label}, {track.StrokeWord}: {track.Words}."));
        Write(
            svg,
            $"""<svg xmlns="http://www.w3.org/2000/svg" class="figure response" role="img" aria-labelledby="{id}-title {id}-desc" """
                + $"""viewBox="0 0 {Width} {frame.Bottom + 52:0}" font-family="system-ui, sans-serif" font-size="14"><rect width="100%" """
                + $"""height="100%" fill="var(--paper, #faf6ee)"/>"""
        );
        Write(
            svg,
            $"""<title id="{id}-title">{E(title)}</title><desc id="{id}-desc">Gain in dB relative to 20 Hz against frequency from 20 """
                + $"""Hz to 20 kHz. {E(description)}</desc>"""
        );
        Write(
            svg,
            $"""<defs><clipPath id="{id}-plot"><rect x="{Left}" y="{frame.Top}" width="{Right - Left}" """
                + $"""height="{PlotHeight}"/></clipPath></defs>"""
        );
        DrawAxes(svg, frame);
        foreach (Track track in tracks)
        {
            DrawCurve(svg, track, frame, id);
        }

        DrawNames(svg, tracks, frame);
        return svg.Append("</svg>").ToString();
    }

    private static Track TrackOf(string label, Response curve, (bool Given, ResonancePeak? Peak)? exact, int index)
    {
        (double Hz, double Db)[] points = curve.IsSilent
            ? []
            :
            [
                .. curve
                    .Points.Where(point => point.FrequencyHz is >= FromHz * 0.9999 and <= ToHz * 1.0001)
                    .Select(point => (point.FrequencyHz, point.GainDb))
                    .OrderBy(point => point.FrequencyHz),
            ];
        (double Hz, double Db)? peak = null;
        if (exact is { } given)
        {
            peak = given.Peak is { } one ? (one.FrequencyHz, one.GainDb) : null;
        }
        else if (points.Length > 0)
        {
            (double Hz, double Db) highest = points.MaxBy(point => point.Db);
            peak = highest.Db > 0.05 ? highest : null;
        }

        string found = peak is { } top ? "peak " + PeakWords(top) : "no peak";
        return new Track(label, points, peak, curve.IsSilent ? "silent, volume at 0" : found, index);
    }

    private static string PeakWords((double Hz, double Db) peak) =>
        peak.Hz < 1000
            ? string.Create(CultureInfo.InvariantCulture, $"{peak.Hz:0} Hz, {peak.Db:+0.0;−0.0} dB")
            : string.Create(CultureInfo.InvariantCulture, $"{peak.Hz / 1000:0.00} kHz, {peak.Db:+0.0;−0.0} dB");

    private static void DrawAxes(StringBuilder svg, Frame frame)
    {
        svg.Append("""<g stroke="var(--ink, #1d1a16)" stroke-width="1">""");
        foreach (
            double hz in Enumerable
                .Range(1, 3)
                .SelectMany(decade => Enumerable.Range(1, 9).Select(digit => digit * Math.Pow(10, decade)))
                .Append(10_000)
                .Append(20_000)
                .Where(hz => hz >= FromHz)
        )
        {
            Write(
                svg,
                $"""<path d="M{Frame.X(hz):0.#} {frame.Top}V{frame.Bottom}" opacity="{(s_labelledHz.Contains(hz) ? 0.22 : 0.1)}"/>"""
            );
        }

        for (double db = frame.LowDb; db <= frame.HighDb; db += frame.StepDb)
        {
            Write(svg, $"""<path d="M{Left} {frame.Y(db):0.#}H{Right}" opacity="{(Math.Abs(db) < 1e-9 ? 0.7 : 0.22)}"/>""");
        }

        Write(
            svg,
            $"""<rect x="{Left}" y="{frame.Top}" width="{Right - Left}" height="{PlotHeight}" fill="none"/></g><g fill="var(--ink, """
                + $"""#1d1a16)" font-size="13">"""
        );
        foreach (double hz in s_labelledHz)
        {
            Write(
                svg,
                $"""<text class="tick" x="{Frame.X(hz):0.#}" y="{frame.Bottom + 18}" """
                    + $"""text-anchor="middle">{(hz < 1000 ? hz : hz / 1000)}{(hz < 1000 ? "" : " k")}</text>"""
            );
        }

        for (double db = frame.LowDb; db <= frame.HighDb; db += frame.StepDb)
        {
            Write(svg, $"""<text class="tick" x="{Left - 8}" y="{frame.Y(db) + 4.5:0.#}" text-anchor="end">{db:+0;−0;0}</text>""");
        }

        Write(
            svg,
            $"""<text class="axis" x="{(Left + Right) / 2}" y="{frame.Bottom + 42}" text-anchor="middle" """
                + $"""font-size="14">Frequency, Hz</text>"""
                + $"""<text class="axis" transform="translate(18 {frame.Top + PlotHeight / 2}) rotate(-90)" """
                + $"""text-anchor="middle" font-size="14">Gain relative to 20 Hz, dB</text></g>"""
        );
    }

    private static void DrawCurve(StringBuilder svg, Track track, Frame frame, string id)
    {
        if (track.Points.Length == 0)
        {
            return;
        }

        StringBuilder path = new();
        double lastX = double.NegativeInfinity;
        for (int i = 0; i < track.Points.Length; i++)
        {
            // Closer than half a pixel no eye tells points apart.
            double x = Frame.X(track.Points[i].Hz);
            if (x - lastX >= 0.5 || i == track.Points.Length - 1)
            {
                path.Append(path.Length == 0 ? 'M' : 'L')
                    .Append(CultureInfo.InvariantCulture, $"{x:0.#} {frame.Y(Math.Max(track.Points[i].Db, frame.LowDb - 20)):0.#}");
                lastX = x;
            }
        }

        Write(svg, $"""<path clip-path="url(#{id}-plot)" d="{path}" {track.Stroke}/>""");
    }

    /// <summary>Each curve's name with its peak, over the flat of the curves, and a thin line from it to the curve.</summary>
    private static void DrawNames(StringBuilder svg, Track[] tracks, Frame frame)
    {
        double y = frame.Top + NameRow;
        foreach (Track track in tracks.OrderByDescending(track => track.Peak?.Db ?? double.NegativeInfinity))
        {
            string words = tracks.Length == 1 ? track.Words : $"{track.Label}: {track.Words}";
            if (Named(track) is { } at)
            {
                double end = Left + 16 + 7.2 * words.Length,
                    x = Frame.X(at.Hz);
                Write(
                    svg,
                    $"""<path class="leader" d="M{Math.Min(end, x):0.#} {y - 4:0.#}L{x:0.#} {frame.Y(at.Db):0.#}" """
                        + $"""fill="none" stroke="{track.Colour}" stroke-width="0.8"/>"""
                );
                Mark(svg, track, x, frame.Y(at.Db));
            }

            Write(
                svg,
                $"""<text class="name" x="{Left + 10}" y="{y:0.#}" font-size="13" font-weight="600" fill="{track.Colour}" """
                    + $"""stroke="var(--paper, #faf6ee)" stroke-width="4" paint-order="stroke">{E(words)}</text>"""
            );
            y += NameRow;
        }
    }

    /// <summary>
    /// Where a name's line meets its curve: at the peak, else where the curve has come down by 3 dB or ends; null for silence.
    /// </summary>
    private static (double Hz, double Db)? Named(Track track)
    {
        if (track.Peak is { Hz: >= FromHz and <= ToHz } || track.Points.Length == 0)
        {
            return track.Points.Length == 0 ? null : track.Peak;
        }

        return track.Points.Cast<(double Hz, double Db)?>().FirstOrDefault(point => point!.Value.Db <= -3, track.Points[^1]);
    }

    private static void Mark(StringBuilder svg, Track track, double x, double y)
    {
        string shape = (track.Index % 4) switch
        {
            0 => "m-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0z",
            1 => "m-5 -5h10v10h-10z",
            2 => "m0 -6l6 6l-6 6l-6 -6z",
            _ => "m0 -6l6 10h-12z",
        };
        Write(svg, $"""<path d="M{x:0.#} {y:0.#}{shape}" fill="var(--paper, #faf6ee)" stroke="{track.Colour}" stroke-width="2"/>""");
    }

    private static void Write(StringBuilder svg, InvariantText text) => svg.Append(text.ToText());

    private sealed record Track(string Label, (double Hz, double Db)[] Points, (double Hz, double Db)? Peak, string Words, int Index)
    {
        public string Colour => Index % 2 == 0 ? "var(--copper, #b4622d)" : "var(--ink, #1d1a16)";

        public string StrokeWord => s_strokeWords[Index % s_strokes.Length];

        public string Stroke =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"""fill="none" stroke="{Colour}" stroke-width="{(Index < 4 ? 2.5 : 1.25)}" stroke-linejoin="round"{Dashes}"""
            );

        private string Dashes => s_strokes[Index % 4] is { Length: > 0 } dashes ? $" stroke-dasharray=\"{dashes}\"" : "";
    }

    /// <summary>Where Hz and dB lie on the sheet.</summary>
    private readonly record struct Frame(double LowDb, double HighDb, double StepDb, double Top)
    {
        public double Bottom => Top + PlotHeight;

        public static Frame Around(Track[] tracks, double top)
        {
            double[] gains = [0, .. tracks.SelectMany(track => track.Points).Select(point => point.Db)];
            double peak = Math.Max(gains.Max(), tracks.Max(track => track.Peak?.Db) ?? 0),
                low = Math.Max(gains.Min(), peak - 45);
            double step = peak - low > 24 ? 10 : 5;

            // Room over the flat of the curves for their names.
            double bottom = Math.Min(-step, step * Math.Floor(low / step)),
                names = Math.Min(0.5, (NameRow * (tracks.Length + 1.0)) / PlotHeight),
                high = Math.Max(peak + 2, -bottom * names / (1 - names));
            return new Frame(bottom, step * Math.Ceiling(high / step), step, top);
        }

        public static double X(double hz) => Left + (Right - Left) * Math.Log(hz / FromHz) / Math.Log(ToHz / FromHz);

        public double Y(double db) => Top + PlotHeight * (HighDb - db) / (HighDb - LowDb);
    }
}
