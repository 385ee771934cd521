using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Checks that no two solid bodies stand in the same place, and none in another coil's winding.</summary>
internal static class BodyChecks
{
    /// <summary>An upright cylinder or box; Path is the field of the part it belongs to, Coil the coil it stands in or −1, Index the pole of its row.</summary>
    private sealed record Body(string Path, int Coil, int Index, double XM, double YM, double HalfXM, double HalfYM, double LowM, double HighM, bool Round);

    public static void Check(Recipe recipe, ProblemList problems)
    {
        List<Body> bodies = [.. Poles(recipe), .. Bars(recipe)];
        HashSet<(string, string)> told = [];
        for (int i = 0; i < bodies.Count; i++)
        {
            for (int j = i + 1; j < bodies.Count; j++)
            {
                Body a = bodies[i];
                Body b = bodies[j];
                bool samePole = a.Path == b.Path && a.Index == b.Index;
                if (!samePole && Overlap(a, b) && told.Add((a.Path, b.Path)))
                {
                    problems.Add(b.Path, a.Path == b.Path ? "the poles of this row stand into each other; the spacing must be at least the diameter" : $"this part stands in the same place as {a.Path}");
                }
            }
        }

        CheckWindings(recipe, bodies, problems);
    }

    private static void CheckWindings(Recipe recipe, List<Body> bodies, ProblemList problems)
    {
        List<Body> formers = [.. Formers(recipe)];
        for (int i = 0; i < formers.Count; i++)
        {
            Body former = formers[i];
            foreach (Body other in formers.Skip(i + 1).Where(other => Overlap(former, other)))
            {
                problems.Add(other.Path + ".position", $"this coil stands in the same place as {former.Path}");
            }

            IEnumerable<string> inTheWay = bodies.Where(body => body.Coil != former.Coil && Overlap(former, body) && !Inside(body, recipe.Coils[former.Coil]))
                .Select(body => body.Path).Distinct();
            foreach (string path in inTheWay)
            {
                problems.Add(path, $"this part stands in the winding of {former.Path}");
            }
        }
    }

    private static IEnumerable<Body> Formers(Recipe recipe)
    {
        for (int i = 0; i < recipe.Coils.Count; i++)
        {
            if (recipe.Coils[i] is { Bobbin: RecipeBobbin bobbin, Position: RecipePoint at } coil)
            {
                double buildM = coil.Winding?.Build?.Si ?? 0;
                double halfM = bobbin.WindingHeight.Si / 2;
                yield return new Body(
                    $"coils[{i}]", i, 0, at.X.Si, at.Y.Si, bobbin.CoreLength.Si / 2 + buildM, bobbin.CoreWidth.Si / 2 + buildM, at.Z.Si - halfM, at.Z.Si + halfM, false);
            }
        }
    }

    private static IEnumerable<Body> Poles(Recipe recipe)
    {
        for (int i = 0; i < recipe.Coils.Count; i++)
        {
            RecipeCoil? coil = recipe.Coils[i];
            for (int j = 0; j < (coil?.Poles.Count ?? 0); j++)
            {
                if (coil!.Poles[j] is RecipePole pole && coil.Position is RecipePoint at && pole.TopsM.Count == pole.PositionsM.Count)
                {
                    foreach (Body body in Row(pole, at, $"coils[{i}].poles[{j}]", i))
                    {
                        yield return body;
                    }
                }
            }
        }
    }

    private static IEnumerable<Body> Row(RecipePole pole, RecipePoint at, string path, int coil)
    {
        double halfM = pole.Diameter.Si / 2;
        for (int k = 0; k < pole.PositionsM.Count; k++)
        {
            double xM = at.X.Si + pole.PositionsM[k];
            double highM = at.Z.Si + pole.TopsM[k];
            yield return new Body(path, coil, k, xM, at.Y.Si, (pole.Width?.Si ?? pole.Diameter.Si) / 2, halfM, highM - pole.Length.Si, highM, pole.Shape != PoleShape.Blade);
            if (pole is { HeadDiameter.Si: double headM, HeadHeight.Si: double heightM })
            {
                yield return new Body(path, coil, k, xM, at.Y.Si, headM / 2, headM / 2, highM - heightM, highM, true);
            }
        }
    }

    private static IEnumerable<Body> Bars(Recipe recipe)
    {
        for (int i = 0; i < recipe.Magnets.Count; i++)
        {
            if (recipe.Magnets[i] is RecipeMagnet magnet)
            {
                yield return Box($"magnets[{i}]", magnet.Size, magnet.Centre);
            }
        }

        for (int i = 0; i < recipe.Metalwork.Count; i++)
        {
            if (recipe.Metalwork[i] is { Size: RecipePoint size, Centre: RecipePoint centre })
            {
                yield return Box($"metalwork[{i}]", size, centre);
            }
        }
    }

    private static Body Box(string path, RecipePoint size, RecipePoint centre) => new(
        path, -1, 0, centre.X.Si, centre.Y.Si, size.X.Si / 2, size.Y.Si / 2, centre.Z.Si - size.Z.Si / 2, centre.Z.Si + size.Z.Si / 2, false);

    private static bool Inside(Body body, RecipeCoil coil) =>
        Math.Abs(body.XM - coil.Position.X.Si) + body.HalfXM <= coil.Bobbin.CoreLength.Si / 2 + RecipeChecks.SlackM
        && Math.Abs(body.YM - coil.Position.Y.Si) + body.HalfYM <= coil.Bobbin.CoreWidth.Si / 2 + RecipeChecks.SlackM;

    private static bool Overlap(Body a, Body b)
    {
        const double Slack = RecipeChecks.SlackM;
        double dx = Math.Abs(a.XM - b.XM);
        double dy = Math.Abs(a.YM - b.YM);
        bool boxes = Math.Min(a.HighM, b.HighM) - Math.Max(a.LowM, b.LowM) > Slack && dx < a.HalfXM + b.HalfXM - Slack && dy < a.HalfYM + b.HalfYM - Slack;
        if (!boxes || (!a.Round && !b.Round))
        {
            return boxes;
        }

        if (a.Round && b.Round)
        {
            return Math.Sqrt(dx * dx + dy * dy) < a.HalfXM + b.HalfXM - Slack;
        }

        (Body round, Body box) = a.Round ? (a, b) : (b, a);
        double awayX = Math.Max(dx - box.HalfXM, 0);
        double awayY = Math.Max(dy - box.HalfYM, 0);
        return Math.Sqrt(awayX * awayX + awayY * awayY) < round.HalfXM - Slack;
    }
}
