using Coilwright.Physics;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>The solid parts of a recipe, each in its true shape from above.</summary>
internal static class SolidParts
{
    /// <summary>Windings as far as known: the former, and the build where it is stated.</summary>
    public static IEnumerable<SolidPart> Windings(Recipe recipe)
    {
        for (int i = 0; i < recipe.Coils.Count; i++)
        {
            if (recipe.Coils[i] is { Bobbin: RecipeBobbin bobbin, Position: RecipePoint at } coil)
            {
                double halfM = bobbin.WindingHeight.Si / 2;
                yield return new SolidPart(
                    $"coils[{i}]",
                    SolidKind.Winding,
                    i,
                    0,
                    Former(bobbin, at).Grown(coil.Winding?.Build?.Si ?? 0),
                    at.Z.Si - halfM,
                    at.Z.Si + halfM
                );
            }
        }
    }

    public static PlanShape Former(RecipeBobbin bobbin, RecipePoint at) =>
        PlanShape.Rounded(at.X.Si, at.Y.Si, bobbin.CoreLength.Si / 2, bobbin.CoreWidth.Si / 2, bobbin.EndRadius.Si);

    public static IEnumerable<SolidPart> Poles(Recipe recipe)
    {
        for (int i = 0; i < recipe.Coils.Count; i++)
        {
            RecipeCoil? coil = recipe.Coils[i];
            for (int j = 0; j < (coil?.Poles.Count ?? 0); j++)
            {
                if (coil!.Poles[j] is RecipePole pole && coil.Position is RecipePoint at && pole.TopsM.Count == pole.PositionsM.Count)
                {
                    foreach (SolidPart part in Row(pole, at, $"coils[{i}].poles[{j}]", i))
                    {
                        yield return part;
                    }
                }
            }
        }
    }

    public static IEnumerable<SolidPart> Bars(Recipe recipe)
    {
        for (int i = 0; i < recipe.Magnets.Count; i++)
        {
            if (recipe.Magnets[i] is RecipeMagnet magnet)
            {
                yield return Bar($"magnets[{i}]", magnet.Size, magnet.Centre);
            }
        }

        for (int i = 0; i < recipe.Metalwork.Count; i++)
        {
            if (recipe.Metalwork[i] is { Size: RecipePoint size, Centre: RecipePoint centre })
            {
                yield return Bar($"metalwork[{i}]", size, centre);
            }
        }
    }

    /// <summary>Covers as a flat and a wall, plates as a flat; all about the common origin.</summary>
    public static IEnumerable<SolidPart> Sheets(Recipe recipe)
    {
        for (int i = 0; i < recipe.Metalwork.Count; i++)
        {
            if (recipe.Metalwork[i] is { Shape: not MetalworkShape.Keeper } sheet)
            {
                double thickM = sheet.Thickness.Si,
                    cornerM = sheet.Corner?.Si ?? Math.Min(sheet.Length.Si, sheet.Width.Si) / 2;
                PlanShape outside = PlanShape.Rounded(0, 0, sheet.Length.Si / 2, sheet.Width.Si / 2, cornerM);
                yield return new SolidPart($"metalwork[{i}]", SolidKind.Flat, -1, 0, outside, sheet.Top.Si - thickM, sheet.Top.Si);
                if (sheet.Shape == MetalworkShape.Cover)
                {
                    yield return new SolidPart($"metalwork[{i}]", SolidKind.Wall, -1, 0, outside, sheet.Bottom.Si, sheet.Top.Si - thickM)
                    {
                        Hollow = outside.Grown(-thickM),
                    };
                }
            }
        }
    }

    private static IEnumerable<SolidPart> Row(RecipePole pole, RecipePoint at, string path, int coil)
    {
        double halfM = pole.Diameter.Si / 2;
        for (int k = 0; k < pole.PositionsM.Count; k++)
        {
            double xM = at.X.Si + pole.PositionsM[k],
                highM = at.Z.Si + pole.TopsM[k];
            PlanShape shape =
                pole.Shape == PoleShape.Blade
                    ? PlanShape.Box(xM, at.Y.Si, (pole.Width?.Si ?? pole.Diameter.Si) / 2, halfM)
                    : PlanShape.Circle(xM, at.Y.Si, halfM);
            yield return new SolidPart(path, SolidKind.Pole, coil, k, shape, highM - pole.Length.Si, highM);
            if (pole is { HeadDiameter.Si: double headM, HeadHeight.Si: double heightM })
            {
                yield return new SolidPart(path, SolidKind.Pole, coil, k, PlanShape.Circle(xM, at.Y.Si, headM / 2), highM - heightM, highM);
            }
        }
    }

    private static SolidPart Bar(string path, RecipePoint size, RecipePoint centre) =>
        new(
            path,
            SolidKind.Bar,
            -1,
            0,
            PlanShape.Box(centre.X.Si, centre.Y.Si, size.X.Si / 2, size.Y.Si / 2),
            centre.Z.Si - size.Z.Si / 2,
            centre.Z.Si + size.Z.Si / 2
        );
}
