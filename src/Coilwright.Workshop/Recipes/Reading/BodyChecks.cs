using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Checks that no two solid parts stand in the same place, and none in another coil's winding.</summary>
internal static class BodyChecks
{
    public static void Check(Recipe recipe, ProblemList problems)
    {
        List<SolidPart> bodies = [.. SolidParts.Poles(recipe), .. SolidParts.Bars(recipe)];
        HashSet<(string, string)> told = [];
        for (int i = 0; i < bodies.Count; i++)
        {
            for (int j = i + 1; j < bodies.Count; j++)
            {
                SolidPart a = bodies[i],
                    b = bodies[j];
                bool samePole = a.Path == b.Path && a.Index == b.Index;
                if (!samePole && a.Collides(b) && told.Add((a.Path, b.Path)))
                {
                    problems.Add(
                        b.Path,
                        a.Path == b.Path
                            ? "the poles of this row stand into each other; the spacing must be at least the diameter"
                            : $"this part stands in the same place as {a.Path}",
                        Shared(a, b)
                    );
                }
            }
        }

        CheckWindings(recipe, bodies, problems);
        CheckSheets(recipe, bodies, problems);
    }

    private static void CheckWindings(Recipe recipe, List<SolidPart> bodies, ProblemList problems)
    {
        List<SolidPart> windings = [.. SolidParts.Windings(recipe)];
        for (int i = 0; i < windings.Count; i++)
        {
            SolidPart winding = windings[i];
            foreach (SolidPart other in windings.Skip(i + 1).Where(winding.Collides))
            {
                problems.Add(other.Path + ".position", $"this coil stands in the same place as {winding.Path}", Shared(winding, other));
            }

            PlanShape former = SolidParts.Former(recipe.Coils[winding.Coil].Bobbin, recipe.Coils[winding.Coil].Position);
            foreach (
                IGrouping<string, SolidPart> inTheWay in bodies
                    .Where(body =>
                        body.Coil != winding.Coil && winding.Collides(body) && !(body.Shape.SticksOutOf(former) <= RecipeChecks.SlackM)
                    )
                    .GroupBy(body => body.Path)
            )
            {
                problems.Add(inTheWay.Key, $"this part stands in the winding of {winding.Path}", Shared(winding, inTheWay.First()));
            }
        }
    }

    /// <summary>
    /// Covers and plates against all else. Poles may pass through the flat of one, in holes of their own, but not through its wall.
    /// </summary>
    private static void CheckSheets(Recipe recipe, List<SolidPart> bodies, ProblemList problems)
    {
        List<SolidPart> sheets = [.. SolidParts.Sheets(recipe)];
        HashSet<(string, string)> told = [];
        for (int i = 0; i < sheets.Count; i++)
        {
            SolidPart sheet = sheets[i];
            IEnumerable<SolidPart> others = bodies.Concat(SolidParts.Windings(recipe)).Concat(sheets.Skip(i + 1));
            foreach (SolidPart other in others.Where(other => other.Path != sheet.Path && sheet.Collides(other)))
            {
                if (!PassesThrough(sheet, other) && told.Add((sheet.Path, other.Path)))
                {
                    string part = sheet.Kind == SolidKind.Wall ? "the wall of this cover" : "this sheet";
                    problems.Add(
                        sheet.Path,
                        $"{part} cuts through {(other.Kind == SolidKind.Winding ? "the winding of " : "")}{other.Path}",
                        Shared(sheet, other),
                        Room(sheet, other)
                    );
                }
            }
        }
    }

    private static bool PassesThrough(SolidPart sheet, SolidPart other) =>
        sheet.Kind == SolidKind.Flat && other.Kind == SolidKind.Pole && other.Shape.SticksOutOf(sheet.Shape) <= RecipeChecks.SlackM;

    /// <summary>What two parts share, in numbers.</summary>
    private static string Shared(SolidPart a, SolidPart b) =>
        $"{Told(a.ReachInto(b))} deep seen from above, at heights {Told(Math.Max(a.LowM, b.LowM))} to {Told(Math.Min(a.HighM, b.HighM))}";

    /// <summary>Where the sheet would be clear of the other part.</summary>
    private static string Room(SolidPart sheet, SolidPart other)
    {
        if (sheet.Hollow is PlanShape inside)
        {
            return $"inside {Told(2 * inside.HalfXM)} by {Told(2 * inside.HalfYM)} about the middle, where {other.Path} reaches "
                + $"{Told(Math.Abs(other.Shape.XM) + other.Shape.HalfXM)} along and "
                + $"{Told(Math.Abs(other.Shape.YM) + other.Shape.HalfYM)} across";
        }

        return $"above {Told(other.HighM)} or below {Told(other.LowM)}; this sheet lies from {Told(sheet.LowM)} to {Told(sheet.HighM)}";
    }

    private static string Told(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm", 4);
}
