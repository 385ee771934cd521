using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads "wire": a gauge of the tables, measured values, or both.</summary>
internal static class WireReader
{
    private static readonly string[] s_builds = ["single", "heavy"];

    public static RecipeWire Read(JsonFields fields)
    {
        fields.Free("notes");
        Entered? bare = fields.Optional("bareDiameter", Allowed.BareDiameter);
        Entered? overall = fields.Optional("overallDiameter", Allowed.OverallDiameter);
        Entered? ohmPerM = fields.Optional("resistancePerLength", Allowed.OhmPerM);
        string gauge = fields.Text("gauge", fields.Has("bareDiameter") ? null : "AWG 42");
        string? nearest = null;
        if (gauge.Length > 0 && !Catalogue.KnowsGauge(gauge, out nearest))
        {
            fields.Problems.Add(fields.PathOf("gauge"), "this gauge is in no table" + Hint(nearest), $"\"{gauge}\"", Catalogue.GaugeRange);
        }

        string insulation = fields.Word("insulation", Catalogue.Insulations) ?? Catalogue.Insulations.First();
        if (bare is Entered inner && overall is Entered outer && outer.Si <= inner.Si)
        {
            fields.Problems.Add(
                fields.PathOf("overallDiameter"), "the diameter over the enamel must be larger than the bare one",
                QuantityText.Echo(outer, QuantityKind.Length), "more than " + QuantityText.Echo(inner, QuantityKind.Length));
        }

        return new RecipeWire
        {
            Gauge = gauge,
            Insulation = insulation,
            Build = Build(fields),
            BareDiameter = bare,
            OverallDiameter = overall,
            ResistancePerLength = ohmPerM,
        };
    }

    private static string Build(JsonFields fields)
    {
        string? build = fields.Word("build", s_builds);
        double? grade = fields.Number("grade", 1, 3, whole: true);
        if (build is not null && grade is not null)
        {
            fields.Problems.Add(fields.PathOf("grade"), "give either build (AWG) or grade (metric)", null);
        }

        return grade is null ? build ?? "single" : "grade " + grade.Value.ToString("0", CultureInfo.InvariantCulture);
    }

    private static string Hint(string? nearest) => nearest is null ? "" : $"; the nearest is \"{nearest}\"";
}
