using System.Globalization;
using System.Text;
using Coilwright.Physics;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Figures;

/// <summary>
/// The pickup of a recipe from above and cut open, to one scale, with its dimension lines: the drawing that one can type into.
/// </summary>
public static class RecipeDrawing
{
    private const string Id = "recipe-drawing";

    /// <summary>Room beside the pickup for dimension lines and their sizes, mm.</summary>
    private const double SideMm = 16,
        EdgeMm = 8,
        BetweenMm = 21;

    /// <summary>The drawing as an SVG element; its dimension lines are links to their fields.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="buildsM">Radial thickness of each winding, m, from its forecast.</param>
    public static string Svg(PickupModel model, IReadOnlyList<double> buildsM)
    {
        (double halfX, double lowY, double highY) = PickupTopFigure.ExtentOf(model, buildsM);
        PickupSection section = new(model, buildsM);
        double sectionDown = -lowY + BetweenMm + Up(section.StringsM),
            bottom = sectionDown - section.LowestM * 1e3 + EdgeMm,
            left = -halfX - SideMm,
            top = -highY - 3 - EdgeMm;
        StringBuilder svg = new();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<svg xmlns="http://www.w3.org/2000/svg" class="figure recipe-drawing" role="group" aria-labelledby="{Id}-title" """
                + $"""viewBox="{left:0.##} {top:0.##} {2 * (halfX + SideMm):0.##} {bottom - top:0.##}" """
                + $"""font-family="system-ui, sans-serif" font-size="2.9">"""
        );
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""<title id="{Id}-title">{E(Title(section))}</title>{PickupTopFigure.WirePattern(Id)}<g class="parts">"""
        );
        PickupTopFigure.AppendParts(svg, model, buildsM, Id);
        svg.Append(
            CultureInfo.InvariantCulture,
            $"""</g><g class="parts" transform="translate(0 {sectionDown:0.##})">{section.Draw(Id)}</g>"""
        );
        svg.Append(Names(left, -highY, sectionDown - Up(section.HighestM), section));
        svg.Append(Dimensions(model, section, (halfX, lowY, highY), sectionDown));
        return svg.Append("</svg>").ToString();
    }

    private static double Up(double m) => m * 1e3;

    private static string Title(PickupSection section) =>
        section.IsAlong
            ? "The pickup from above and cut along its length, to scale, sizes in millimetres"
            : "The pickup from above and cut across, to scale, sizes in millimetres";

    private static string Names(double left, double top, double sectionTop, PickupSection section) =>
        Text(
            $"""<g class="names"><text x="{left + 1:0.##}" y="{top - 1.5:0.##}">from above</text><text x="{left + 1:0.##}" """
                + $"""y="{sectionTop - 1.5:0.##}">{(section.IsAlong ? "cut along" : "cut across")}</text></g>"""
        );

    private static string Text(InvariantText words) => words.ToText();

    private static string Dimensions(
        PickupModel model,
        PickupSection section,
        (double HalfX, double LowY, double HighY) extent,
        double sectionDown
    )
    {
        DimensionLines lines = new();
        for (int index = 0; index < model.Coils.Count; index++)
        {
            FromAbove(lines, model, index, extent);
            InSection(lines, section, model.Coils[index], index, (section.ReachM * 1e3 + 3, sectionDown));
        }

        OfStrings(lines, model, section, sectionDown);
        return lines.ToString();
    }

    /// <summary>Core and room of a coil; of a second coil they are seen while their fields have the focus.</summary>
    private static void FromAbove(DimensionLines lines, PickupModel model, int index, (double HalfX, double LowY, double HighY) extent)
    {
        CoilModel coil = model.Coils[index];
        string path = string.Create(CultureInfo.InvariantCulture, $"coils[{index}]");
        double x = coil.Position.XM * 1e3,
            y = -coil.Position.YM * 1e3,
            half = coil.Bobbin.CoreLengthM * 500,
            wide = coil.Bobbin.CoreWidthM * 500,
            above = index == 0 ? -extent.HighY - 5 : y,
            beside = index == 0 ? -extent.HalfX - 3 : x;
        bool quiet = index > 0;
        lines.Level(path + ".bobbin.coreLength", (x - half, x + half), above, new(quiet ? null : y - wide / 2) { Quiet = quiet });
        lines.Upright(
            path + ".bobbin.coreWidth",
            beside,
            (y - wide, y + wide),
            new(quiet ? null : x - half + 3) { Quiet = quiet, Left = true }
        );
        if (coil.Bobbin.MaxBuildM is { } roomM)
        {
            lines.Level(
                path + ".bobbin.maxBuild",
                (x + half, x + half + roomM * 1e3),
                quiet ? y : -extent.LowY + 4,
                new(quiet ? null : y) { Quiet = quiet, After = true }
            );
        }

        OfPoles(lines, coil, path, quiet, quiet ? y : -extent.LowY + 4);
    }

    private static void OfPoles(DimensionLines lines, CoilModel coil, string path, bool quiet, double below)
    {
        for (int row = 0; row < coil.Poles.Count; row++)
        {
            PoleModel pole = coil.Poles[row];
            string field = string.Create(CultureInfo.InvariantCulture, $"{path}.poles[{row}]");
            double x = coil.Position.XM * 1e3,
                y = -coil.Position.YM * 1e3;
            DimensionLook look = new(quiet || row > 0 ? null : y) { Quiet = quiet || row > 0, Under = true };
            if (pole.Shape == PoleShape.Blade)
            {
                lines.Level(field + ".width", (x - pole.WidthM * 500, x + pole.WidthM * 500), below, look);
                continue;
            }

            if (IsEven(pole.PositionsM))
            {
                lines.Level(field + ".spacing", (x + pole.PositionsM[0] * 1e3, x + pole.PositionsM[1] * 1e3), below, look);
            }

            double middle = x + pole.PositionsM[pole.PositionsM.Count / 2] * 1e3;
            lines.Level(field + ".diameter", (middle - pole.DiameterM * 500, middle + pole.DiameterM * 500), below, look);
        }
    }

    /// <summary>True for a row with one spacing; one with places of its own, two poles a string, has none.</summary>
    private static bool IsEven(IReadOnlyList<double> placesM) =>
        placesM.Count > 1
        && Enumerable.Range(1, placesM.Count - 1).All(i => Math.Abs(placesM[i] - placesM[i - 1] - (placesM[1] - placesM[0])) < 1e-6);

    private static void InSection(DimensionLines lines, PickupSection section, CoilModel coil, int index, (double Right, double Down) place)
    {
        string path = string.Create(CultureInfo.InvariantCulture, $"coils[{index}]");
        double middle = section.MiddleM(coil) * 1e3,
            edge = middle + section.HalfCoreM(coil) * 1e3 + (coil.Bobbin.MaxBuildM ?? 0) * 1e3,
            z = place.Down - coil.Position.ZM * 1e3,
            high = coil.Bobbin.WindingHeightM * 500;
        bool quiet = index > 0;
        lines.Upright(
            path + ".bobbin.windingHeight",
            quiet ? edge + 1 : place.Right,
            (z - high, z + high),
            new(quiet ? null : edge) { Quiet = quiet }
        );
        for (int row = 0; row < coil.Poles.Count; row++)
        {
            PoleModel pole = coil.Poles[row];
            double top = z - pole.TopsM[0] * 1e3,
                first = middle + (section.IsAlong ? pole.PositionsM[0] * 1e3 : 0);
            lines.Upright(
                string.Create(CultureInfo.InvariantCulture, $"{path}.poles[{row}].length"),
                quiet ? first : -place.Right,
                (top, top + pole.LengthM * 1e3),
                new(quiet || row > 0 ? null : first) { Quiet = quiet || row > 0, Left = true }
            );
        }
    }

    private static void OfStrings(DimensionLines lines, PickupModel model, PickupSection section, double down)
    {
        if (model.Strings is not { } strings)
        {
            return;
        }

        double under = down - section.StringsM * 1e3;
        double beside = section.ReachM * 1e3 + 3;
        lines.Upright("strings.clearance", beside, (under, down - section.HighestM * 1e3), new(beside - 8));
        if (section.IsAlong && strings.Count > 1)
        {
            lines.Level("strings.spacing", (strings.XM(0) * 1e3, strings.XM(1) * 1e3), under - 3, new(under - 0.5));
        }
    }
}
