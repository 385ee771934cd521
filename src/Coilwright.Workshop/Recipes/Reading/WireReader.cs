using System.Globalization;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads "wire": a gauge of the tables, measured values, or both.</summary>
internal static class WireReader
{
    private static readonly string[] s_builds = ["single", "heavy", "triple", "quad"];

    public static RecipeWire Read(JsonFields fields)
    {
        fields.Free("notes");
        Entered? bare = fields.Optional("bareDiameter", Allowed.BareDiameter);
        Entered? overall = fields.Optional("overallDiameter", Allowed.OverallDiameter);
        Entered? ohmPerM = fields.Optional("resistancePerLength", Allowed.OhmPerM);
        string gauge = fields.Text("gauge", fields.Has("bareDiameter") ? null : "AWG 42");
        WireSize? size = gauge.Length > 0 ? Size(fields, gauge) : null;
        string insulation = fields.Word("insulation", Catalogue.Insulations) ?? Catalogue.PlainEnamel;
        if (bare is Entered inner && overall is Entered outer && outer.Si <= inner.Si)
        {
            fields.Problems.Add(
                fields.PathOf("overallDiameter"),
                "the diameter over the enamel must be larger than the bare one",
                QuantityParser.Echo(outer, QuantityKind.Length),
                "more than " + QuantityParser.Echo(inner, QuantityKind.Length)
            );
        }

        return new RecipeWire
        {
            Gauge = size?.Gauge ?? gauge,
            Insulation = insulation,
            Build = Build(fields, size),
            BareDiameter = bare,
            OverallDiameter = overall,
            ResistancePerLength = ohmPerM,
        };
    }

    private static WireSize? Size(JsonFields fields, string gauge)
    {
        if (fields.RefusesComma(fields.PathOf("gauge"), gauge, typed => [typed.Replace(',', '.')], Catalogue.GaugeRange))
        {
            return null;
        }

        WireSize? size = Catalogue.Gauge(gauge, out string? nearest);
        if (size is null)
        {
            string hint = nearest is null ? "" : $"; the nearest is \"{nearest}\"";
            fields.Problems.Add(fields.PathOf("gauge"), "this gauge is in no table" + hint, $"\"{gauge}\"", Catalogue.GaugeRange);
        }

        return size;
    }

    /// <summary>
    /// The film's thickness class. For a metric size "single" is read as grade 1 and "heavy" as grade 2, which they come close to.
    /// </summary>
    private static string Build(JsonFields fields, WireSize? size)
    {
        string? build = fields.Word("build", s_builds);
        double? grade = fields.Number("grade", 1, 3, whole: true);
        if (build is not null && grade is not null)
        {
            fields.Problems.Add(fields.PathOf("grade"), "give either build (AWG) or grade (metric)", null);
            return build;
        }

        bool metric = size?.IsMetric ?? grade is not null;
        string name = (grade, metric, build) switch
        {
            ({ } number, _, _) => "grade-" + number.ToString("0", CultureInfo.InvariantCulture),
            (_, false, _) => build ?? "single",
            (_, _, "heavy") => "grade-2",
            _ => "grade-1",
        };
        if (size is not null && !double.IsNaN(grade ?? 0) && !size.Builds.ContainsKey(name))
        {
            fields.Problems.Add(
                fields.PathOf(grade is null ? "build" : "grade"),
                $"{size.Gauge} is not made with this film",
                $"\"{name}\"",
                string.Join(", ", size.Builds.Keys)
            );
        }

        return name;
    }
}
