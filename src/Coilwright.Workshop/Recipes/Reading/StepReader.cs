using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads the steps of a recipe.</summary>
internal static class StepReader
{
    private static readonly string[] s_fixed = ["assembly", "final test", "packing"];

    private static readonly Limits s_time = new(QuantityKind.Duration, 0, 60 * 86400, "min", "10 min");

    public static RecipeStep Read(JsonFields fields)
    {
        fields.Free("notes");
        Entered? least = fields.Optional("least", s_time), most = fields.Optional("most", s_time);
        if (least is { } shortest && most is { } longest && longest.Si < shortest.Si)
        {
            fields.Problems.Add(fields.PathOf("most"), "the longest time lies below the shortest", longest.Typed, $"{shortest.Typed} or more");
        }

        return new RecipeStep(fields.Text("name", "potting"), least, most, fields.Optional("hold", s_time), fields.Text("holdReason"));
    }

    /// <summary>Names once each, and none of those that every piece goes through.</summary>
    public static void Check(IReadOnlyList<RecipeStep> steps, ProblemList problems)
    {
        HashSet<string> names = new(StringComparer.Ordinal);
        for (int place = 0; place < steps.Count; place++)
        {
            if (steps[place] is not { Name: { Length: > 0 } name })
            {
                continue;
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
