using System.Text.Json;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads the steps of a recipe.</summary>
internal static class StepReader
{
    private static readonly string[] s_fixed = ["assembly", "final test", "packing"];

    /// <summary>Steps that are recorded by basket or ink, where no magnet is charged.</summary>
    private static readonly string[] s_noMagnets = ["potting", "marking"];

    private static readonly string[] s_ofLevel = ["jig", "levelTolerance"];

    private static readonly Limits s_tolerance = new(QuantityKind.Fraction, 1e-4, 0.5, "%", "3 %");
    private static readonly Limits s_time = new(QuantityKind.Duration, 0, 60 * 86400, "min", "10 min");

    public static RecipeStep Read(JsonFields fields)
    {
        fields.Free("notes");
        Entered? least = fields.Optional("least", s_time),
            most = fields.Optional("most", s_time);
        if (least is { } shortest && most is { } longest && longest.Si < shortest.Si)
        {
            fields.Problems.Add(
                fields.PathOf("most"),
                "the longest time lies below the shortest",
                longest.Typed,
                $"{shortest.Typed} or more"
            );
        }

        return new RecipeStep(fields.Text("name", "potting"), least, most, fields.Optional("hold", s_time), fields.Text("holdReason"))
        {
            Charge = ChargeOf(fields),
        };
    }

    /// <summary>A level as it is typed at the bench too: "full", "80 %" or "900 G"; with a jig's distance for a field.</summary>
    private static RequiredCharge? ChargeOf(JsonFields fields)
    {
        JsonElement? typed = fields.Own("level"),
            jig = fields.Own("jig");
        Entered? tolerance = fields.Optional("levelTolerance", s_tolerance);
        if (typed is null)
        {
            foreach (string name in s_ofLevel.Where(fields.Has))
            {
                fields.Problems.Add(
                    fields.PathOf(name),
                    "this belongs to a level, and there is none",
                    null,
                    "\"level\": " + ChargeReader.Allowed
                );
            }

            return null;
        }

        List<Problem> wrong = [];
        MagnetLevel? level = ChargeReader.Read(new ChargeEntry(TextOf(typed.Value), jig is null ? "" : TextOf(jig.Value)), wrong);
        foreach (Problem problem in wrong)
        {
            fields.Problems.Add(
                fields.PathOf(problem.Field == "charge" ? "level" : problem.Field),
                problem.Message,
                problem.Understood,
                problem.Allowed
            );
        }

        if (level is { FieldT: null } && jig is not null)
        {
            fields.Problems.Add(
                fields.PathOf("jig"),
                "a probe's distance belongs to a level in gauss",
                JsonFields.Told(jig.Value),
                "leave it out"
            );
        }

        double? told = tolerance is { IsKnown: true } part ? part.Si : null;
        return level is null ? null : new RequiredCharge(level, told);
    }

    /// <summary>A text as written; anything else as it stands, which no reading of a quantity takes.</summary>
    private static string TextOf(JsonElement value) =>
        value.ValueKind == JsonValueKind.String && value.GetString() is { Length: > 0 } text ? text : JsonFields.Told(value);

    /// <summary>
    /// Names once each, and none of those that every piece goes through; a charge only where there are magnets and none is charged
    /// elsewhere.
    /// </summary>
    /// <param name="steps">The steps as read.</param>
    /// <param name="magnets">True when the recipe has anything to charge.</param>
    /// <param name="problems">Where problems go.</param>
    public static void Check(IReadOnlyList<RecipeStep> steps, bool magnets, ProblemList problems)
    {
        HashSet<string> names = new(StringComparer.Ordinal);
        for (int place = 0; place < steps.Count; place++)
        {
            if (steps[place] is not { Name: { Length: > 0 } name })
            {
                continue;
            }

            if (steps[place].Charge is not null && (!magnets || s_noMagnets.Contains(name)))
            {
                problems.Add(
                    FormattableString.Invariant($"steps[{place}].level"),
                    magnets ? $"magnets are not charged in {name}" : "this recipe has no magnets to charge",
                    null,
                    magnets ? "a step of its own, for example \"magnets\"" : "leave it out"
                );
            }

            string path = FormattableString.Invariant($"steps[{place}].name");
            if (s_fixed.Contains(name))
            {
                problems.Add(path, "every piece goes through this step anyway; leave it out", $"\"{name}\"");
            }
            else if (!names.Add(name))
            {
                problems.Add(path, "this step is named twice", $"\"{name}\"", "a name of its own for each step");
            }
        }
    }
}
