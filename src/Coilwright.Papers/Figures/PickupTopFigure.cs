using System.Globalization;
using System.Text;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Figures;

/// <summary>
/// The pickup seen from above, to scale: formers, windings, poles, strings, magnets and cover, with its sizes in millimetres.
/// </summary>
/// <remarks>
/// Drawn in millimetres, x to the right across the strings, y up along them. Told apart by line and hatching, so that black and white is
/// enough.
/// </remarks>
public static class PickupTopFigure
{
    private const double MarginMm = 9;

    /// <summary>The figure as an SVG element that names itself to a screen reader.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="buildsM">Radial thickness of each winding, m, from its forecast; where it is missing the measured one or the window is
    /// drawn.</param>
    /// <param name="id">Prefix of the element ids, unique in the page.</param>
    public static string Svg(PickupModel model, IReadOnlyList<double>? buildsM = null, string id = "pickup-top")
    {
        double[] builds = BuildsOf(model, buildsM);
        (double halfX, double lowY, double highY) = Extent(model, builds);
        StringBuilder svg = new();
        Open(svg, id, Describe(model, builds), (-halfX - MarginMm, -highY - MarginMm, 2 * (halfX + MarginMm), highY - lowY + 2 * MarginMm));
        DrawParts(svg, model, builds, id);
        DrawSizes(svg, halfX, lowY, highY);
        return svg.Append("</svg>").ToString();
    }

    /// <summary>
    /// The same without its sizes, in the middle of a frame: figures in frames of one size stand beside each other to one scale.
    /// </summary>
    /// <param name="model">The pickup.</param>
    /// <param name="buildsM">Radial thickness of each winding, m.</param>
    /// <param name="frameMm">The frame, mm of the pickup.</param>
    /// <param name="id">Prefix of the element ids, unique in the page.</param>
    public static string Sketch(PickupModel model, IReadOnlyList<double> buildsM, (double WidthMm, double HeightMm) frameMm, string id)
    {
        double[] builds = BuildsOf(model, buildsM);
        (_, double lowY, double highY) = Extent(model, builds);
        StringBuilder svg = new();
        double top = -(highY + lowY) / 2 - frameMm.HeightMm / 2;
        Open(svg, id, Describe(model, builds), (-frameMm.WidthMm / 2, top, frameMm.WidthMm, frameMm.HeightMm));
        DrawParts(svg, model, builds, id);
        return svg.Append("</svg>").ToString();
    }

    /// <summary>Smallest frame that a sketch fits into with its strings, mm.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="buildsM">Radial thickness of each winding, m.</param>
    public static (double WidthMm, double HeightMm) FrameOf(PickupModel model, IReadOnlyList<double> buildsM)
    {
        (double halfX, double lowY, double highY) = Extent(model, BuildsOf(model, buildsM));
        return (2 * halfX + 2, highY - lowY + 8);
    }

    /// <summary>How far the pickup reaches, mm: half its length, its lowest and its highest y.</summary>
    internal static (double HalfX, double LowY, double HighY) ExtentOf(PickupModel model, IReadOnlyList<double> buildsM) =>
        Extent(model, BuildsOf(model, buildsM));

    /// <summary>The parts alone, for a drawing that stands them beside others.</summary>
    internal static void AppendParts(StringBuilder svg, PickupModel model, IReadOnlyList<double> buildsM, string id) =>
        DrawParts(svg, model, BuildsOf(model, buildsM), id);

    /// <summary>The hatching of a winding.</summary>
    internal static string WirePattern(string id) =>
        $"""<defs><pattern id="{id}-wire" width="0.9" height="0.9" patternUnits="userSpaceOnUse" """
        + """patternTransform="rotate(45)"><path d="M0 0V0.9" stroke="var(--copper, #a8541f)" """
        + """stroke-width="0.45"/></pattern></defs>""";

    private static double[] BuildsOf(PickupModel model, IReadOnlyList<double>? buildsM) =>
        [
            .. model.Coils.Select(
                (coil, index) =>
                    buildsM is not null && index < buildsM.Count
                        ? buildsM[index]
                        : coil.Winding.MeasuredBuildM ?? coil.Bobbin.MaxBuildM ?? 0
            ),
        ];

    private static void Open(StringBuilder svg, string id, string described, (double Left, double Top, double Width, double Height) box)
    {
        Write(
            svg,
            $"""<svg xmlns="http://www.w3.org/2000/svg" class="figure pickup-top" role="img" aria-labelledby="{id}-title {id}-desc" """
                + $"""viewBox="{box.Left:0.##} {box.Top:0.##} {box.Width:0.##} {box.Height:0.##}" """
                + $"""font-family="system-ui, sans-serif" font-size="2.6">"""
        );
        Write(svg, $"""<title id="{id}-title">Pickup from above, to scale</title><desc """ + $"""id="{id}-desc">{E(described)}</desc>""");
        svg.Append(WirePattern(id));
    }

    private static void DrawParts(StringBuilder svg, PickupModel model, double[] builds, string id)
    {
        (_, double lowY, double highY) = Extent(model, builds);
        DrawBars(svg, model);
        DrawSheets(svg, model);
        for (int index = 0; index < model.Coils.Count; index++)
        {
            DrawCoil(svg, model.Coils[index], builds[index], id);
        }

        DrawStrings(svg, model, lowY, highY);
    }

    private static (double HalfX, double LowY, double HighY) Extent(PickupModel model, double[] builds)
    {
        List<(double HalfX, double LowY, double HighY)> parts =
        [
            .. model.Coils.Select(
                (coil, index) =>
                    Box(
                        coil.Position.XM,
                        coil.Position.YM,
                        coil.Bobbin.CoreLengthM + 2 * builds[index],
                        coil.Bobbin.CoreWidthM + 2 * builds[index]
                    )
            ),
        ];
        parts.AddRange(model.Bars.Select(bar => Box(bar.CentreM.XM, bar.CentreM.YM, bar.SizeM.XM, bar.SizeM.YM)));
        parts.AddRange(model.Sheets.Select(sheet => Box(0, 0, sheet.LengthM, sheet.WidthM)));
        double strings = model.Strings is { } set ? (set.Count - 1) * set.SpacingM / 2 * 1e3 : 0;
        return (Math.Max(strings, parts.Max(part => part.HalfX)), parts.Min(part => part.LowY), parts.Max(part => part.HighY));
    }

    private static (double HalfX, double LowY, double HighY) Box(double xM, double yM, double lengthM, double widthM) =>
        ((Math.Abs(xM) + lengthM / 2) * 1e3, (yM - widthM / 2) * 1e3, (yM + widthM / 2) * 1e3);

    private static void DrawCoil(StringBuilder svg, CoilModel coil, double buildM, string id)
    {
        Bobbin bobbin = coil.Bobbin;
        Write(svg, $"""<g class="coil"><title>{E(coil.Name)}</title>""");
        Outline(
            svg,
            coil.Position,
            bobbin.CoreLengthM + 2 * buildM,
            bobbin.CoreWidthM + 2 * buildM,
            bobbin.EndRadiusM + buildM,
            $"""fill="url(#{id}-wire)" stroke="var(--copper, #a8541f)" stroke-width="0.3" """
        );
        Outline(
            svg,
            coil.Position,
            bobbin.CoreLengthM,
            bobbin.CoreWidthM,
            bobbin.EndRadiusM,
            """fill="var(--paper, #fff)" stroke="currentColor" stroke-width="0.3" """
        );
        foreach (PoleModel pole in coil.Poles)
        {
            foreach (double xM in pole.PositionsM)
            {
                DrawPole(svg, coil, pole, xM);
            }
        }

        svg.Append("</g>");
    }

    private static void DrawPole(StringBuilder svg, CoilModel coil, PoleModel pole, double xM)
    {
        double x = (coil.Position.XM + xM) * 1e3,
            y = -coil.Position.YM * 1e3;
        if (pole.Shape == PoleShape.Blade)
        {
            Write(
                svg,
                $"""<rect x="{x - pole.WidthM * 500:0.###}" y="{y - pole.DiameterM * 500:0.###}" width="{pole.WidthM * 1e3:0.###}" """
                    + $"""height="{pole.DiameterM * 1e3:0.###}" fill="none" stroke="currentColor" stroke-width="0.35"/>"""
            );
            return;
        }

        Write(
            svg,
            $"""<circle cx="{x:0.###}" cy="{y:0.###}" r="{Math.Max(pole.DiameterM, pole.HeadDiameterM) * 500:0.###}" fill="none" """
                + $"""stroke="currentColor" stroke-width="0.35"/>"""
        );
        if (pole.PolarisationT.Value > 0 || pole.PolarisationT.Value < 0)
        {
            Write(
                svg,
                $"""<text x="{x:0.###}" y="{y + 0.9:0.###}" text-anchor="middle" """
                    + $"""fill="currentColor">{(pole.PolarisationT.Value > 0 ? "N" : "S")}</text>"""
            );
        }
        else if (pole.Shape == PoleShape.Screw)
        {
            double half = Math.Max(pole.DiameterM, pole.HeadDiameterM) * 400;
            Write(svg, $"""<path d="M{x - half:0.###} {y:0.###}H{x + half:0.###}" stroke="currentColor" stroke-width="0.5"/>""");
        }
    }

    private static void DrawBars(StringBuilder svg, PickupModel model)
    {
        foreach (BarModel bar in model.Bars)
        {
            Write(
                svg,
                $"""<rect class="bar" x="{(bar.CentreM.XM - bar.SizeM.XM / 2) * 1e3:0.###}" """
                    + $"""y="{-(bar.CentreM.YM + bar.SizeM.YM / 2) * 1e3:0.###}" width="{bar.SizeM.XM * 1e3:0.###}" """
                    + $"""height="{bar.SizeM.YM * 1e3:0.###}" fill="none" stroke="currentColor" stroke-width="0.25" """
                    + $"""stroke-dasharray="1.2 0.8"><title>{E(KeyLabels.Of(bar.Material))}</title></rect>"""
            );
        }
    }

    private static void DrawSheets(StringBuilder svg, PickupModel model)
    {
        foreach (SheetModel sheet in model.Sheets)
        {
            string dash = sheet.Shape == SheetShape.Cover ? "" : """stroke-dasharray="3 1" """;
            Outline(
                svg,
                default,
                sheet.LengthM,
                sheet.WidthM,
                sheet.CornerM ?? Math.Min(sheet.LengthM, sheet.WidthM) / 2,
                $"""fill="none" stroke="currentColor" stroke-width="0.45" {dash}"""
            );
        }
    }

    private static void DrawStrings(StringBuilder svg, PickupModel model, double lowY, double highY)
    {
        if (model.Strings is not { } strings)
        {
            return;
        }

        for (int index = 0; index < strings.Count; index++)
        {
            double x = (index - (strings.Count - 1) / 2.0) * strings.SpacingM * 1e3;
            Write(
                svg,
                $"""<path class="string" d="M{x:0.###} {-highY - 3:0.###}V{-lowY + 3:0.###}" stroke="currentColor" stroke-width="0.3" """
                    + $"""stroke-opacity="0.55"/>"""
            );
        }
    }

    private static void DrawSizes(StringBuilder svg, double halfX, double lowY, double highY)
    {
        double below = -lowY + 5;
        Write(
            svg,
            $"""<g class="sizes" stroke="currentColor" stroke-width="0.15" fill="currentColor"><path fill="none" d="M{-halfX:0.##} """
                + $"""{below - 1:0.##}V{below + 1:0.##}M{-halfX:0.##} {below:0.##}H{halfX:0.##}M{halfX:0.##} """
                + $"""{below - 1:0.##}V{below + 1:0.##}"/><text x="0" y="{below + 3.2:0.##}" text-anchor="middle" """
                + $"""stroke="none">{2 * halfX:0.0} mm</text>"""
        );
        double right = halfX + 4;
        Write(
            svg,
            $"""<path fill="none" d="M{right - 1:0.##} {-highY:0.##}H{right + 1:0.##}M{right:0.##} """
                + $"""{-highY:0.##}V{-lowY:0.##}M{right - 1:0.##} {-lowY:0.##}H{right + 1:0.##}"/><text """
                + $"""transform="translate({right + 3.2:0.##} {-(highY + lowY) / 2:0.##}) rotate(-90)" text-anchor="middle" """
                + $"""stroke="none">{highY - lowY:0.0} mm</text></g>"""
        );
    }

    private static void Outline(StringBuilder svg, Vector3M centre, double lengthM, double widthM, double radiusM, string look) =>
        Write(
            svg,
            $"""<rect x="{(centre.XM - lengthM / 2) * 1e3:0.###}" y="{-(centre.YM + widthM / 2) * 1e3:0.###}" """
                + $"""width="{lengthM * 1e3:0.###}" height="{widthM * 1e3:0.###}" rx="{radiusM * 1e3:0.###}" {look}/>"""
        );

    /// <summary>What the drawing shows, for people who hear it.</summary>
    private static string Describe(PickupModel model, double[] builds)
    {
        IEnumerable<string> coils = model.Coils.Select(
            (coil, index) =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"coil {coil.Name}: former {coil.Bobbin.CoreLengthM * 1e3:0.##} by {coil.Bobbin.CoreWidthM * 1e3:0.##} mm, winding "
                        + $"{builds[index] * 1e3:0.##} mm thick, {coil.Poles.Sum(pole => pole.PositionsM.Count)} poles"
                )
        );
        string strings = model.Strings is { } set
            ? string.Create(CultureInfo.InvariantCulture, $"; {set.Count} strings {set.SpacingM * 1e3:0.##} mm apart")
            : "";
        string sheets = string.Concat(
            model.Sheets.Select(sheet =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"; {(sheet.Shape == SheetShape.Cover ? "cover" : "plate")} of {KeyLabels.Of(sheet.Material)} "
                        + $"{sheet.LengthM * 1e3:0.##} by {sheet.WidthM * 1e3:0.##} mm"
                )
            )
        );
        return string.Join("; ", coils) + strings + sheets + ".";
    }

    private static void Write(StringBuilder svg, InvariantText text) => svg.Append(text.ToText());
}
