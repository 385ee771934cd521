using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Physics.Circuit;
using PdfSharp.Drawing;

namespace Coilwright.Papers.Pdf;

/// <summary>A response on a logarithmic axis, its peak marked and written out.</summary>
internal static class PdfCurve
{
    public const double Height = 156;

    private const double FromHz = 20,
        ToHz = 20_000;

    public static void Draw(XGraphics page, Pen pen, CurvePart part, XRect box)
    {
        XRect plot = new(box.X + 30, box.Y + 12, box.Width - 40, box.Height - 46);
        ResponsePoint[] points = part.Curve.IsSilent
            ? []
            :
            [
                .. part.Curve.Points.Where(point =>
                    point.FrequencyHz is >= FromHz * 0.999 and <= ToHz * 1.001 && double.IsFinite(point.GainDb)
                ),
            ];
        double top = Math.Ceiling((points.Select(point => point.GainDb).DefaultIfEmpty(0).Max() + 1) / 6) * 6,
            bottom = Math.Max(-42, Math.Floor(points.Select(point => point.GainDb).DefaultIfEmpty(-6).Min() / 6) * 6);
        double X(double hz) => plot.X + plot.Width * Math.Log(hz / FromHz) / Math.Log(ToHz / FromHz);
        double Y(double db) => plot.Y + plot.Height * (top - Math.Clamp(db, bottom, top)) / (top - bottom);
        XPen thin = new(Pen.InkColour, 0.3);
        foreach (
            (double hz, string label) in (ReadOnlySpan<(double, string)>)
                [
                    (20, "20"),
                    (50, "50"),
                    (100, "100"),
                    (200, "200"),
                    (500, "500"),
                    (1000, "1 k"),
                    (2000, "2 k"),
                    (5000, "5 k"),
                    (10_000, "10 k"),
                    (20_000, "20 k"),
                ]
        )
        {
            page.DrawLine(thin, X(hz), plot.Y, X(hz), plot.Bottom);
            page.DrawString(label, pen.Font(7), Pen.Ink, new XPoint(X(hz), plot.Bottom + 9), XStringFormats.BaseLineCenter);
        }

        for (double db = bottom; db <= top + 0.01; db += 6)
        {
            page.DrawLine(thin, plot.X, Y(db), plot.Right, Y(db));
            page.DrawString(
                db.ToString("+0;-0;0", CultureInfo.InvariantCulture),
                pen.Font(7),
                Pen.Ink,
                new XPoint(plot.X - 4, Y(db) + 2.5),
                XStringFormats.BaseLineRight
            );
        }

        page.DrawString("Hz", pen.Font(7), Pen.Ink, new XPoint(plot.Right, plot.Bottom + 18), XStringFormats.BaseLineRight);
        page.DrawString("dB", pen.Font(7), Pen.Ink, new XPoint(plot.X - 4, plot.Y - 7), XStringFormats.BaseLineRight);
        if (points.Length > 1)
        {
            page.DrawLines(new XPen(Pen.Copper, 1.4), [.. points.Select(point => new XPoint(X(point.FrequencyHz), Y(point.GainDb)))]);
        }

        if (part.Peak is { } peak && peak.FrequencyHz is > FromHz and < ToHz)
        {
            page.DrawEllipse(new XPen(Pen.InkColour, 1), XBrushes.White, X(peak.FrequencyHz) - 3, Y(peak.GainDb) - 3, 6, 6);
        }

        page.DrawString(part.Caption, pen.Font(8), Pen.Ink, new XPoint(plot.X, box.Bottom - 4), XStringFormats.BaseLineLeft);
    }
}
