using Coilwright.Papers.Figures;
using Coilwright.Papers.Formatting;
using Coilwright.Papers.Sheets;
using Coilwright.Physics.Circuit;
using PdfSharp.Drawing;

namespace Coilwright.Papers.Pdf;

/// <summary>A response on a logarithmic axis, its peak marked and written out.</summary>
internal static class PdfCurve
{
    public const double Height = 156;

    private const double FromHz = 20,
        ToHz = 20_000,
        DeepestDb = 40;

    public static void Draw(XGraphics page, Pen pen, CurvePart part, XRect box)
    {
        XRect plot = new(box.X + 42, box.Y + 6, box.Width - 52, box.Height - 48);
        ResponsePoint[] points = Drawn(part);
        PlotAxis x = PlotAxis.Audio,
            y = Gains(points, part.Peak);
        XPoint At(double hz, double db) => new(plot.X + plot.Width * x.Part(hz), plot.Bottom - plot.Height * Math.Clamp(y.Part(db), 0, 1));
        Axes(page, pen, plot, x, y);
        if (points.Length > 1)
        {
            page.DrawLines(new XPen(Pen.Copper, 1.4), [.. points.Select(point => At(point.FrequencyHz, point.GainDb))]);
        }

        if (part.Peak is { } peak && peak.FrequencyHz is > FromHz and < ToHz)
        {
            XPoint top = At(peak.FrequencyHz, peak.GainDb);
            page.DrawEllipse(new XPen(Pen.InkColour, 1), XBrushes.White, top.X - 3, top.Y - 3, 6, 6);
            page.DrawString(Words(peak), pen.Font(8, bold: true), Pen.Ink, new XPoint(top.X - 8, top.Y - 2), XStringFormats.BaseLineRight);
        }

        page.DrawString(part.Caption, pen.Font(8), Pen.Ink, new XPoint(plot.X, box.Bottom - 4), XStringFormats.BaseLineLeft);
    }

    private static ResponsePoint[] Drawn(CurvePart part) =>
        part.Curve.IsSilent
            ? []
            :
            [
                .. part.Curve.Points.Where(point =>
                    point.FrequencyHz is >= FromHz * 0.999 and <= ToHz * 1.001 && double.IsFinite(point.GainDb)
                ),
            ];

    /// <summary>Round ticks about the curve, no deeper than what is heard of it, with room above the peak for its words.</summary>
    private static PlotAxis Gains(ResponsePoint[] points, ResonancePeak? peak)
    {
        double high = Math.Max(points.Select(point => point.GainDb).DefaultIfEmpty(0).Max(), peak?.GainDb ?? 0) + 2,
            low = points.Select(point => point.GainDb).DefaultIfEmpty(-6).Min();
        return PlotAxis.Round([high, Math.Max(low, high - DeepestDb)], "Gain relative to 20 Hz, dB");
    }

    private static void Axes(XGraphics page, Pen pen, XRect plot, PlotAxis x, PlotAxis y)
    {
        XPen thin = new(Pen.InkColour, 0.3);
        foreach (double tick in x.Ticks)
        {
            double at = plot.X + plot.Width * x.Part(tick);
            page.DrawLine(thin, at, plot.Y, at, plot.Bottom);
            page.DrawString(x.Number(tick), pen.Font(7), Pen.Ink, new XPoint(at, plot.Bottom + 9), XStringFormats.BaseLineCenter);
        }

        foreach (double tick in y.Ticks)
        {
            double at = plot.Bottom - plot.Height * y.Part(tick);
            page.DrawLine(thin, plot.X, at, plot.Right, at);
            page.DrawString(y.Number(tick), pen.Font(7), Pen.Ink, new XPoint(plot.X - 4, at + 2.5), XStringFormats.BaseLineRight);
        }

        XPoint middle = new(plot.X + plot.Width / 2, plot.Bottom + 20);
        page.DrawString(x.Label, pen.Font(7.5), Pen.Ink, middle, XStringFormats.BaseLineCenter);
        XPoint beside = new(plot.X - 30, plot.Y + plot.Height / 2);
        XGraphicsState upright = page.Save();
        page.RotateAtTransform(-90, beside);
        page.DrawString(y.Label, pen.Font(7.5), Pen.Ink, beside, XStringFormats.BaseLineCenter);
        page.Restore(upright);
    }

    private static string Words(ResonancePeak peak) =>
        $"{FigureFormatter.Value(peak.FrequencyHz, "Hz")}, {FigureFormatter.Value(peak.GainDb, "dB")}";
}
