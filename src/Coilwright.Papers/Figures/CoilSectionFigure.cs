using System.Text;
using Coilwright.Physics.Winding;

namespace Coilwright.Papers.Figures;

/// <summary>Drawing of a laid section to scale: the former at the left, flanges above and below, every turn as a dot.</summary>
public static class CoilSectionFigure
{
    // keeps the drawing under 600 kB; of larger sections every second, third… turn is drawn, and the drawing says so
    private const int MostDots = 25_000;
    private const int Shades = 10;
    private const double Left = 96;
    private const double Top = 58;
    private const double FormerWidth = 26;
    private const double FlangeHeight = 14;

    /// <summary>A cover further out than this many builds is not drawn: it would squeeze the winding.</summary>
    private const double MostApart = 4;

    // Attributes alone: opened by itself the drawing obeys a policy that lets no style through.
    private const string InkFill = "fill=\"#1d1a16\"";
    private const string InkStroke = "stroke=\"#1d1a16\"";
    private const string InkBoth = "fill=\"#1d1a16\" stroke=\"#1d1a16\"";
    private const string CopperStroke = "stroke=\"#b4622d\"";
    private const string PaperFill = "fill=\"#faf6ee\"";

    /// <summary>An accessible SVG of the half section. Winding order runs from light to dark.</summary>
    /// <param name="section">The turns.</param>
    /// <param name="bobbin">Its window; the section must have been laid in the same height.</param>
    /// <param name="bareM">Diameter of the copper, m: the size of the dots.</param>
    /// <param name="overallM">Diameter over the enamel, m.</param>
    /// <param name="cover">The wall of the cover about the coil; null without one.</param>
    public static string Svg(LaidSection section, Bobbin bobbin, double bareM, double overallM, CoverInSection? cover = null)
    {
        double flangeM = Math.Max(bobbin.MaxBuildM ?? 0, Math.Max(section.HighestM, 10 * overallM));
        cover = cover?.InsideM < MostApart * flangeM ? cover : null;
        double roomM = Math.Max(flangeM, cover is null ? 0 : cover.InsideM + cover.ThicknessM);
        double scale = Math.Min(440 / bobbin.WindingHeightM, 460 / roomM); // pixels a metre
        Frame frame = new(scale, bobbin.WindingHeightM * scale, roomM * scale, flangeM * scale);
        StringBuilder svg = new();
        AppendHead(svg, frame, Summary(section, bobbin));
        AppendBobbin(svg, frame);
        AppendTurns(svg, frame, section, bareM);
        AppendSizes(svg, frame, section, bobbin);
        if (cover is not null)
        {
            AppendCover(svg, frame, section, cover);
        }

        return svg.Append("</svg>\n").ToString();
    }

    private sealed record Frame(double Scale, double Height, double Room, double Flange)
    {
        public double Width => Math.Max(Left + Room + 170, 400);

        public double Bottom => Top + Height;
    }

    private static string Summary(LaidSection section, Bobbin bobbin) =>
        Text(
            $"Half section of a coil: {section.Spec.Turns:N0} turns in {1e3 * bobbin.WindingHeightM:f2} mm between flanges, build "
                + $"{1e3 * section.BuildM:f2} mm, {100 * section.PackingFactor:f0} % of it wire with its coat"
        );

    private static void AppendHead(StringBuilder svg, Frame frame, string summary)
    {
        double height = frame.Bottom + 84;
        svg.Append(
                Text(
                    $"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-labelledby=\"coil-section-title\" viewBox=\"0 0 "
                        + $"{frame.Width:f0} {height:f0}\" "
                )
            )
            .Append(Text($"width=\"{frame.Width:f0}\" height=\"{height:f0}\" font-family=\"sans-serif\" font-size=\"14\">\n"))
            .Append(Text($"<title id=\"coil-section-title\">{summary}</title>\n"))
            .Append(Text($"<rect width=\"100%\" height=\"100%\" {PaperFill}/>\n"));
    }

    private static void AppendBobbin(StringBuilder svg, Frame frame)
    {
        string style = Text($"{InkBoth} fill-opacity=\"0.18\"");
        double flange = FormerWidth + frame.Flange;
        svg.Append(
            Text($"<rect x=\"{Left - FormerWidth:f1}\" y=\"{Top:f1}\" width=\"{FormerWidth:f1}\" height=\"{frame.Height:f1}\" {style}/>\n")
        );
        foreach (double y in new[] { Top - FlangeHeight, frame.Bottom })
        {
            svg.Append(
                Text($"<rect x=\"{Left - FormerWidth:f1}\" y=\"{y:f1}\" width=\"{flange:f1}\" height=\"{FlangeHeight:f1}\" {style}/>\n")
            );
        }

        AppendText(svg, Left - FormerWidth, Top - FlangeHeight - 5, "flange", "start");
    }

    /// <summary>The wall as a bar beside the flanges, with the room between the highest turn and it.</summary>
    private static void AppendCover(StringBuilder svg, Frame frame, LaidSection section, CoverInSection cover)
    {
        double x = Left + cover.InsideM * frame.Scale,
            thick = Math.Max(2, cover.ThicknessM * frame.Scale),
            high = Left + section.HighestM * frame.Scale,
            y = frame.Bottom - 18;
        svg.Append(
            Text(
                $"<rect class=\"cover\" x=\"{x:f1}\" y=\"{Top - FlangeHeight - 10:f1}\" width=\"{thick:f1}\" "
                    + $"height=\"{frame.Height + 2 * FlangeHeight + 20:f1}\" {InkBoth} fill-opacity=\"0.5\"/>\n"
            )
        );
        double clearM = cover.InsideM - section.HighestM;
        if (clearM > 0)
        {
            AppendLine(svg, high, y, x, y, "");
            AppendLine(svg, high, y - 6, high, y + 6, "");
        }

        AppendText(svg, x + thick + 6, frame.Bottom - 36, "cover", "start");
        AppendText(svg, x + thick + 6, frame.Bottom - 18, Text($"{1e3 * Math.Abs(clearM):f2} mm"), "start");
        AppendText(svg, x + thick + 6, frame.Bottom, clearM > 0 ? "clear" : "too little", "start");
    }

    private static void AppendTurns(StringBuilder svg, Frame frame, LaidSection section, double bareM)
    {
        int turns = section.XM.Count;
        int every = (turns + MostDots - 1) / MostDots;
        svg.Append(Text($"<g fill=\"none\" {CopperStroke} stroke-width=\"{bareM * frame.Scale:f2}\" stroke-linecap=\"round\">\n"));
        for (int shade = 0; shade < Shades; shade++)
        {
            int from = (int)((long)turns * shade / Shades);
            int to = (int)((long)turns * (shade + 1) / Shades);
            svg.Append(Text($"<path stroke-opacity=\"{0.4 + 0.6 * shade / (Shades - 1):f2}\" d=\""));
            for (int i = from; i < to; i += every)
            {
                svg.Append(Text($"M{Left + section.YM[i] * frame.Scale:0.##} {frame.Bottom - section.XM[i] * frame.Scale:0.##}h0"));
            }

            svg.Append("\"/>\n");
        }

        svg.Append("</g>\n");
        string drawn =
            every == 1
                ? "Light to dark: in the order of winding."
                : Text($"1 of {every} turns drawn. Light to dark: in the order of winding.");
        AppendText(svg, 12, frame.Bottom + 74, drawn, "start");
    }

    private static void AppendSizes(StringBuilder svg, Frame frame, LaidSection section, Bobbin bobbin)
    {
        AppendText(
            svg,
            12,
            24,
            Text($"{section.Spec.Turns:N0} turns, {100 * section.PackingFactor:f0} % of the build is wire with its coat"),
            "start"
        );
        double middle = Top + frame.Height / 2;
        AppendLine(svg, 48, Top, 48, frame.Bottom, "");
        AppendLine(svg, 42, Top, 54, Top, "");
        AppendLine(svg, 42, frame.Bottom, 54, frame.Bottom, "");
        svg.Append(
            Text(
                $"<text transform=\"translate(36 {middle:f1}) rotate(-90)\" text-anchor=\"middle\" "
                    + $"{InkFill}>{1e3 * bobbin.WindingHeightM:f2} mm</text>\n"
            )
        );
        double buildX = Left + section.BuildM * frame.Scale;
        double y = frame.Bottom + FlangeHeight + 14;
        AppendLine(svg, Left, y, buildX, y, "");
        AppendLine(svg, Left, y - 6, Left, y + 6, "");
        AppendLine(svg, buildX, y - 6, buildX, y + 6, "");
        AppendText(svg, Left, y + 22, Text($"build {1e3 * section.BuildM:f2} mm, highest turn {1e3 * section.HighestM:f2} mm"), "start");
        if (bobbin.MaxBuildM is double roomM)
        {
            double x = Left + roomM * frame.Scale;
            AppendLine(svg, x, Top - FlangeHeight - 4, x, frame.Bottom + FlangeHeight + 4, " stroke-dasharray=\"6 4\"");
            AppendText(svg, x + 8, Top + 16, "room", "start");
            AppendText(svg, x + 8, Top + 34, Text($"{1e3 * roomM:f2} mm"), "start");
        }
    }

    private static void AppendLine(StringBuilder svg, double x1, double y1, double x2, double y2, string extra) =>
        svg.Append(Text($"<line x1=\"{x1:f1}\" y1=\"{y1:f1}\" x2=\"{x2:f1}\" y2=\"{y2:f1}\" {InkStroke} stroke-width=\"1.5\"{extra}/>\n"));

    private static void AppendText(StringBuilder svg, double x, double y, string words, string anchor) =>
        svg.Append(Text($"<text x=\"{x:f1}\" y=\"{y:f1}\" text-anchor=\"{anchor}\" {InkFill}>{words}</text>\n"));

    private static string Text(InvariantText words) => words.ToText();
}
