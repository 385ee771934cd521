using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Solving;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Materials;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Solving.Variations;

/// <summary>Answers a ready question: makes the variant, and says what it changes on the bench and in the numbers.</summary>
public static class RecipeVariation
{
    private const string Field = "value";
    private const int Seven = 7,
        Four = 4,
        LongestText = 80;
    internal static readonly Limits Spacing = new(QuantityKind.Length, 4e-3, 30e-3, "mm", "9.8 mm")
    {
        Outside = "outside the allowed range",
    };
    internal static readonly Limits Longer = new(QuantityKind.Length, 0.1e-3, 60e-3, "mm", "2.8 mm")
    {
        Outside = "outside the allowed range",
    };

    /// <summary>The variant, or what is wrong with the question.</summary>
    /// <param name="recipe">The base.</param>
    /// <param name="question">The question.</param>
    /// <param name="typed">What was typed for it; the usual value when empty.</param>
    /// <param name="load">What hangs on it, for the loaded peak.</param>
    /// <param name="cancel">Stops it.</param>
    public static ReadOutcome<Variation> Of(
        Recipe recipe,
        VariationQuestion question,
        string typed,
        LoadCircuit? load,
        CancellationToken cancel = default
    )
    {
        string text = typed.Trim().Length == 0 ? question.Usual : typed.Trim();
        List<Problem> problems = [];
        VariationEdit edit = new(recipe);
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        string suffix = Apply(question.Kind, edit, recipe, model, text, problems);
        ReadOutcome<Recipe> read = problems.Count > 0 ? new(null, problems) : RecipeReader.Read(edit.Json);
        if (read.Value is not { } found || !read.Ok)
        {
            return new(null, read.Problems);
        }

        Recipe variant = found with { SizeRules = recipe.SizeRules, Learning = recipe.Learning };

        bool physical = question.Kind is not (VariationKind.LeftHanded or VariationKind.Leads or VariationKind.Colour);
        return new(
            new Variation(
                question,
                $"{recipe.Name}, {suffix}",
                edit.Json,
                [.. edit.Parts.Distinct()],
                physical ? Physics(model, edit.Json, variant, load, cancel) : null
            ),
            []
        );
    }

    /// <summary>Makes the change; gives the words that tell the variant from its base.</summary>
    private static string Apply(
        VariationKind kind,
        VariationEdit edit,
        Recipe recipe,
        PickupModel model,
        string text,
        List<Problem> problems
    )
    {
        if (recipe.Strings is null && kind is VariationKind.SevenStrings or VariationKind.Bass)
        {
            problems.Add(new Problem("strings", "the recipe states no strings, so there is no number of them to change"));
            return "";
        }

        switch (kind)
        {
            case VariationKind.Spacing when Length(text, Spacing, problems) is { } spacing:
                edit.Space(spacing);
                return $"{RecipeEdit.Millimetres(spacing)} spacing";
            case VariationKind.LongerCore when Length(text, Longer, problems) is { } longer:
                edit.Lengthen(longer);
                return $"core {RecipeEdit.Millimetres(longer)} longer";
            case VariationKind.SevenStrings:
                edit.Strings(Seven, recipe.Strings!.Spacing.Si);
                return "seven strings";
            case VariationKind.Bass when Length(text, Spacing, problems) is { } bass:
                edit.Strings(Four, bass);
                edit.AsBass();
                return "bass";
            case VariationKind.LeftHanded:
                edit.Mirror(model);
                return "left-handed";
            case VariationKind.Cover when Sheet(text, problems) is { } material:
                edit.Cover(
                    material,
                    model,
                    [.. Forecaster.Predict(model, null, new ForecastOptions { Strings = false }).Coils.Select(coil => coil.Build.Value)]
                );
                return $"{KeyLabels.Of(material)} cover";
            case VariationKind.Leads or VariationKind.Colour when Label(text, problems) is { } label:
                edit.Tag(kind == VariationKind.Leads ? "leads" : "bobbin", label);
                edit.Parts.Add(
                    kind == VariationKind.Leads
                        ? $"leads: {label}; parts list and label change, nothing that a string or a meter at the coil could tell"
                        : $"bobbin: {label}; parts list and label change, nothing that a string or a meter could tell"
                );
                return label;
            default:
                return "";
        }
    }

    private static VariationPhysics Physics(PickupModel model, string json, Recipe variant, LoadCircuit? load, CancellationToken cancel)
    {
        PickupModel changed = RecipeModelBuilder.ToModel(variant),
            even = changed;
        for (int coil = 0; coil < model.Coils.Count; coil++)
        {
            even = WindingResistance.WithTurns(
                even,
                coil,
                Math.Round(WindingResistance.TurnsFor(changed, coil, WindingResistance.At20C(model, coil)))
            );
        }

        (double Now, double Then)[] turns = [.. model.Coils.Zip(even.Coils, (now, then) => (now.Winding.Turns, then.Winding.Turns))];
        bool moved = turns.Any(pair => Math.Abs(pair.Now - pair.Then) > 0.5);
        PickupModel[] models = moved ? [model, changed, even] : [model, changed];
        SolvedPickup[] solved = new SolvedPickup[models.Length];
        Parallel.For(0, models.Length, new ParallelOptions { CancellationToken = cancel }, k =>
            solved[k] = new SolvedPickup(models[k], load, cancel: cancel)
        );
        return new VariationPhysics(
            PickupComparison.Between(solved[0], solved[1]),
            [.. model.Coils.Select((_, c) => (WindingResistance.MeanTurnM(model, c), WindingResistance.MeanTurnM(changed, c)))],
            turns,
            moved ? PickupComparison.Between(solved[0], solved[2]) : [],
            moved ? new RecipeEdit(json).Turns([.. turns.Select(pair => (int)pair.Then)]).Json : null,
            solved[1].Warnings.FirstOrDefault(warning => warning.MeansItDoesNotFit)?.Message
        );
    }

    private static double? Length(string text, Limits limits, List<Problem> problems)
    {
        bool read = QuantityParser.TryParse(text, limits, unitRequired: true, out Entered entered, out string why);
        if (read && limits.Allows(entered.Si))
        {
            return entered.Si;
        }

        problems.Add(
            new Problem(Field, read ? limits.Outside : why, read ? QuantityParser.Echo(entered, QuantityKind.Length) : text, limits.Range)
        );
        return null;
    }

    private static string? Sheet(string text, List<Problem> problems)
    {
        if (MaterialCatalogue.Find(KeyLabels.KeyOf(text, Catalogue.Materials)) is { } material && material.WorkingPolarisationT is null)
        {
            return material.Key;
        }

        problems.Add(
            new Problem(
                Field,
                "no such sheet metal is in the table of materials",
                text,
                string.Join(
                    ", ",
                    MaterialCatalogue
                        .All.Where(one => one.WorkingPolarisationT is null && one.ConductivitySPerM.Estimate.Value > 0)
                        .Select(one => one.Key)
                )
            )
        );
        return null;
    }

    private static string? Label(string text, List<Problem> problems)
    {
        if (text.Length <= LongestText)
        {
            return text;
        }

        problems.Add(new Problem(Field, "too long for a label", $"{text.Length} characters", $"1 to {LongestText} characters"));
        return null;
    }
}
