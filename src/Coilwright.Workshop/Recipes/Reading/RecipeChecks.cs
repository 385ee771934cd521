using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>
/// Checks that fields agree with each other. A value that was not understood is NaN, so that no comparison with it can fail.
/// </summary>
internal static class RecipeChecks
{
    /// <summary>Parts may touch: what is smaller than this is rounding, m.</summary>
    public const double SlackM = 1e-7;

    /// <summary>Poles of all coils together.</summary>
    private const int MostPoles = 120;

    public static void Check(Recipe recipe, ProblemList problems)
    {
        HashSet<string> names = new(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < recipe.Coils.Count; i++)
        {
            if (recipe.Coils[i] is not RecipeCoil coil)
            {
                continue;
            }

            if (coil.Name.Length > 0 && !names.Add(coil.Name))
            {
                problems.Add($"coils[{i}].name", "two coils have this name", $"\"{coil.Name}\"", "a name of its own for each coil");
            }

            CheckCoil(coil, $"coils[{i}]", problems);
            WindingChecks.Check(coil, $"coils[{i}]", problems);
        }

        int poles = recipe
            .Coils.Where(coil => coil is not null)
            .Sum(coil => coil.Poles.Where(pole => pole is not null).Sum(pole => pole.PositionsM.Count));
        if (poles > MostPoles)
        {
            problems.Add(
                "coils",
                "so many poles in one pickup are beyond what is forecast here",
                FormattableString.Invariant($"{poles} poles"),
                FormattableString.Invariant($"1 to {MostPoles} in all coils")
            );
            return; // and too many to hold each against each
        }

        BodyChecks.Check(recipe, problems);
        if (recipe.Strings is RecipeStrings strings)
        {
            CheckStrings(recipe, strings, problems);
        }
    }

    private static void CheckCoil(RecipeCoil coil, string path, ProblemList problems)
    {
        if (coil.Bobbin is not RecipeBobbin bobbin)
        {
            return;
        }

        if (coil.Winding?.Pitch is Entered pitch && pitch.Si > bobbin.WindingHeight.Si)
        {
            problems.Add(
                path + ".winding.pitch",
                "the pitch is larger than the winding height",
                Echo(pitch),
                "at most " + Echo(bobbin.WindingHeight)
            );
        }

        for (int i = 0; i < coil.Poles.Count; i++)
        {
            if (coil.Poles[i] is RecipePole pole && ReachesIntoWinding(pole, bobbin))
            {
                CheckInside(pole, bobbin, $"{path}.poles[{i}]", problems);
            }
        }
    }

    /// <summary>True unless every pole of the row is known to end above or below the winding.</summary>
    private static bool ReachesIntoWinding(RecipePole pole, RecipeBobbin bobbin)
    {
        double halfM = bobbin.WindingHeight.Si / 2;
        return !pole.TopsM.All(topM => topM <= -halfM + SlackM || topM - pole.Length.Si >= halfM - SlackM);
    }

    private static void CheckInside(RecipePole pole, RecipeBobbin bobbin, string path, ProblemList problems)
    {
        bool blade = pole.Shape == PoleShape.Blade;
        string across = blade ? ".thickness" : ".diameter";
        if (pole.Diameter.Si > bobbin.CoreWidth.Si + SlackM)
        {
            problems.Add(
                path + across,
                "the pole is thicker than the former it stands in",
                Echo(pole.Diameter),
                "at most the coreWidth, " + Echo(bobbin.CoreWidth)
            );
            return;
        }

        double halfM = (pole.Width?.Si ?? pole.Diameter.Si) / 2;
        double reachM = pole.PositionsM.Count == 0 ? double.NaN : pole.PositionsM.Max(Math.Abs) + halfM;
        if (reachM > bobbin.CoreLength.Si / 2 + SlackM || (blade && CornerSticksOut(reachM, pole.Diameter.Si / 2, bobbin)))
        {
            string field = blade ? ".width" : ".positions";
            problems.Add(
                path + field,
                "the outermost pole reaches through the former into the winding",
                Told(reachM) + " from the middle",
                $"at most {Told(bobbin.CoreLength.Si / 2)} from the middle, with the ends rounded by {Echo(bobbin.EndRadius)}"
            );
        }

        CheckHead(pole, bobbin, path, problems);
    }

    private static void CheckHead(RecipePole pole, RecipeBobbin bobbin, string path, ProblemList problems)
    {
        if (
            pole is { HeadDiameter: Entered head, HeadHeight: Entered height }
            && head.Si > bobbin.CoreWidth.Si + SlackM
            && pole.TopsM.Any(topM => topM - height.Si < bobbin.WindingHeight.Si / 2 - SlackM)
        )
        {
            problems.Add(
                path + ".headDiameter",
                "the head of the screw lies between the turns",
                Echo(head),
                $"at most the coreWidth, {Echo(bobbin.CoreWidth)}, or the head above the winding"
            );
        }
    }

    private static bool CornerSticksOut(double reachM, double halfThicknessM, RecipeBobbin bobbin)
    {
        double radiusM = bobbin.EndRadius.Si;
        double dx = reachM - (bobbin.CoreLength.Si / 2 - radiusM);
        double dy = halfThicknessM - (bobbin.CoreWidth.Si / 2 - radiusM);
        return dx > 0 && dy > 0 && Math.Sqrt(dx * dx + dy * dy) > radiusM + SlackM;
    }

    private static void CheckStrings(Recipe recipe, RecipeStrings strings, ProblemList problems)
    {
        List<RecipeCoil> coils = [.. recipe.Coils.Where(coil => coil?.Bobbin is not null && coil.Position is not null)];
        double windingTopM = coils.Select(coil => coil.Position.Z.Si + coil.Bobbin.WindingHeight.Si / 2).DefaultIfEmpty(double.NaN).Max();
        double poleTopM = coils
            .SelectMany(coil =>
                coil.Poles.Where(pole => pole is not null).SelectMany(pole => pole.TopsM.Select(topM => topM + coil.Position.Z.Si))
            )
            .DefaultIfEmpty(windingTopM)
            .Max();
        double stringM = poleTopM + strings.Clearance.Si;
        if (stringM < windingTopM)
        {
            problems.Add(
                "strings.clearance",
                "the strings would run through the winding",
                Echo(strings.Clearance),
                "more than " + Told(windingTopM - poleTopM)
            );
        }

        for (int i = 0; i < recipe.Metalwork.Count; i++)
        {
            if (recipe.Metalwork[i] is { Shape: not MetalworkShape.Keeper } sheet && sheet.Top.Si > stringM)
            {
                problems.Add(
                    $"metalwork[{i}].top",
                    "the strings would run below the top of this part",
                    Echo(sheet.Top),
                    "below the strings, at " + Told(stringM)
                );
            }
        }
    }

    private static string Echo(Entered length) => QuantityParser.Echo(length, QuantityKind.Length);

    private static string Told(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm", 4);
}
