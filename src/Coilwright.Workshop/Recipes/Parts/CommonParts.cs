using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Solving;
using Coilwright.Workshop.Solving.Variations;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Recipes.Parts;

/// <summary>Parts as they are usually made, sized and placed to fit a recipe. Sizes and materials are common practice, no source.</summary>
internal static class CommonParts
{
    private const double UsualFlangeM = 2e-3,
        BarHeightM = 3.2e-3,
        BarWidthM = 12.5e-3,
        KeeperWidthM = 3.2e-3,
        PlateM = 1e-3,
        BetweenM = 0.5e-3,
        AroundM = 1e-3;

    /// <summary>How recipes are written.</summary>
    public static JsonSerializerOptions Written { get; } =
        new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The recipe with a closed cover round all coils.</summary>
    public static string WithCover(Recipe recipe)
    {
        VariationEdit edit = new(recipe);
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        edit.Cover("nickel-silver", model, BuildsOf(model));
        return edit.Json;
    }

    /// <summary>Puts one part more behind the others of its list.</summary>
    public static void Append(JsonArray list, RecipePart part, Recipe recipe, int coil)
    {
        if (part == RecipePart.Step)
        {
            AppendStep(list, recipe);
            return;
        }

        list.Add(MakeOne(list, part, RecipeModelBuilder.ToModel(recipe), coil));
    }

    private static JsonObject MakeOne(JsonArray list, RecipePart part, PickupModel model, int coil)
    {
        if (part == RecipePart.Poles)
        {
            return PoleRow(model, model.Coils[coil]);
        }

        if (part == RecipePart.Coil)
        {
            return NextCoil(list, model);
        }

        return part == RecipePart.Plate ? Plate(model) : Bar(model, part == RecipePart.Magnet);
    }

    /// <summary>Rods under every string, as long as the coil is high with both flanges and a little over the top.</summary>
    private static JsonObject PoleRow(PickupModel model, CoilModel coil)
    {
        int count = model.Strings?.Count ?? 6;
        double spacingM = model.Strings?.SpacingM ?? 10.4e-3,
            topM = coil.Bobbin.WindingHeightM / 2 + UsualFlangeM + 1e-3,
            diameterM = Math.Min(4.8e-3, coil.Bobbin.CoreWidthM - 1e-3);
        return new JsonObject
        {
            ["shape"] = "rod",
            ["material"] = "alnico-5",
            ["diameter"] = RecipeEdit.Millimetres(diameterM),
            ["length"] = RecipeEdit.Millimetres(coil.Bobbin.WindingHeightM + 2 * UsualFlangeM + 2e-3),
            ["count"] = count,
            ["spacing"] = RecipeEdit.Millimetres(spacingM),
            ["top"] = RecipeEdit.Millimetres(topM),
            ["magnetised"] = "north-up",
        };
    }

    /// <summary>A coil like the last one beside it, wound the other way.</summary>
    private static JsonObject NextCoil(JsonArray list, PickupModel model)
    {
        JsonObject made = list[^1]!.DeepClone().AsObject();
        CoilModel last = model.Coils[^1];
        double buildM = Math.Max(last.Bobbin.MaxBuildM ?? 0, BuildsOf(model)[^1]);
        made["name"] = string.Create(CultureInfo.InvariantCulture, $"coil {list.Count + 1}");
        JsonObject position = made["position"] as JsonObject ?? [];
        made["position"] = position;
        position["y"] = RecipeEdit.Millimetres(last.Position.YM + last.Bobbin.CoreWidthM + 2 * buildM + AroundM);
        if (made["winding"] is JsonObject winding)
        {
            winding["direction"] = winding["direction"]?.ToString() == "clockwise" ? "counter-clockwise" : "clockwise";
        }

        foreach (JsonObject pole in (made["poles"] as JsonArray ?? []).OfType<JsonObject>())
        {
            pole["magnetised"] = pole["magnetised"]?.ToString() switch
            {
                "north-up" => "south-up",
                "south-up" => "north-up",
                _ => "none",
            };
        }

        return made;
    }

    /// <summary>A magnet or a steel bar right under everything else.</summary>
    private static JsonObject Bar(PickupModel model, bool magnet)
    {
        double zM = LowestM(model) - BetweenM - BarHeightM / 2;
        JsonObject made = new()
        {
            ["shape"] = magnet ? "bar" : "keeper",
            ["material"] = magnet ? "alnico-5" : "low-carbon-steel",
            ["size"] = Three(model.Coils.Max(coil => coil.Bobbin.CoreLengthM), magnet ? BarWidthM : KeeperWidthM, BarHeightM),
            ["centre"] = Three(0, 0, zM),
        };
        if (magnet)
        {
            made["magnetised"] = model.Coils.Count > 1 ? "y" : "z";
        }

        return made;
    }

    private static JsonObject Plate(PickupModel model)
    {
        double[] builds = BuildsOf(model);
        double topM = LowestM(model) - BetweenM;
        double lengthM = 2 * model.Coils.Select((coil, i) => Math.Abs(coil.Position.XM) + coil.Bobbin.CoreLengthM / 2 + builds[i]).Max();
        double widthM = 2 * model.Coils.Select((coil, i) => Math.Abs(coil.Position.YM) + coil.Bobbin.CoreWidthM / 2 + builds[i]).Max();
        return new JsonObject
        {
            ["shape"] = "plate",
            ["material"] = "nickel-silver",
            ["thickness"] = RecipeEdit.Millimetres(PlateM),
            ["length"] = RecipeEdit.Millimetres(lengthM + 2 * AroundM),
            ["width"] = RecipeEdit.Millimetres(widthM + 2 * AroundM),
            ["top"] = RecipeEdit.Millimetres(topM),
            ["bottom"] = RecipeEdit.Millimetres(topM - PlateM),
        };
    }

    /// <summary>The first step of its own brings the usual ones along, which it would otherwise push out.</summary>
    private static void AppendStep(JsonArray list, Recipe recipe)
    {
        if (list.Count == 0)
        {
            foreach (StepPlan usual in UsualSteps.Of(recipe).Skip(1).SkipLast(2))
            {
                JsonObject made = new() { ["name"] = usual.Name };
                Put(made, "least", usual.Least);
                Put(made, "most", usual.Most ?? TimeSpan.Zero);
                Put(made, "hold", usual.HoldAfter);
                if (usual.HoldReason.Length > 0)
                {
                    made["holdReason"] = usual.HoldReason;
                }

                list.Add(made);
            }
        }

        list.Add(new JsonObject { ["name"] = "inspection", ["least"] = "5 min" });
    }

    private static void Put(JsonObject step, string field, TimeSpan time)
    {
        if (time > TimeSpan.Zero)
        {
            step[field] = time.TotalMinutes.ToString("0.##", CultureInfo.InvariantCulture) + " min";
        }
    }

    private static double[] BuildsOf(PickupModel model) =>
        [.. Forecaster.Predict(model, null, new ForecastOptions { Strings = false }).Coils.Select(coil => coil.Build.Value)];

    private static double LowestM(PickupModel model) =>
        new[]
        {
            model.Coils.Min(coil => coil.Position.ZM - coil.Bobbin.WindingHeightM / 2 - (coil.Bobbin.FlangeM ?? UsualFlangeM)),
            model
                .Coils.SelectMany(coil => coil.Poles.Select(pole => coil.Position.ZM + pole.TopsM.Min() - pole.LengthM))
                .DefaultIfEmpty(0)
                .Min(),
            model.Bars.Select(bar => bar.CentreM.ZM - bar.SizeM.ZM / 2).DefaultIfEmpty(0).Min(),
            model.Sheets.Where(sheet => sheet.Shape == SheetShape.Plate).Select(sheet => sheet.BottomM).DefaultIfEmpty(0).Min(),
        }.Min();

    private static JsonArray Three(double xM, double yM, double zM) =>
        [RecipeEdit.Millimetres(xM), RecipeEdit.Millimetres(yM), RecipeEdit.Millimetres(zM)];
}
