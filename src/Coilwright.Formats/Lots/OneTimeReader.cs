using System.Text.Json;
using Coilwright.Analysis.Lots;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Lots;

/// <summary>Reads a question about one purchase.</summary>
internal static class OneTimeReader
{
    private const int MostOutcomes = 10_000;
    private static readonly string[] s_kinds = ["normal", "lognormal", "poisson", "discrete"];

    public static Demand Read(JsonFields fields) =>
        new OneTimeDemand(
            DemandReader.Needed(fields, "overage"),
            DemandReader.Needed(fields, "underage"),
            fields.Object("distribution", Distribution, "{ \"normal\": [50, 8] }") ?? new PoissonNeed(1)
        );

    private static NeedDistribution Distribution(JsonFields fields)
    {
        string[] given = [.. s_kinds.Where(fields.Has)];
        if (given.Length != 1)
        {
            fields.Problems.Add(
                fields.PathOf("normal"),
                "say how the need may come out in one way",
                given.Length == 0 ? null : string.Join(", ", given),
                "one of " + string.Join(", ", s_kinds)
            );
        }

        fields.Free(s_kinds);
        return given.FirstOrDefault() switch
        {
            "normal" => Pair(fields, "normal", -DemandReader.Most, DemandReader.Most) is var (mean, deviation)
                ? new NormalNeed(mean, deviation)
                : new PoissonNeed(1),
            "lognormal" => Pair(fields, "lognormal", -50, 20) is var (mean, deviation)
                ? new LogNormalNeed(mean, deviation)
                : new PoissonNeed(1),
            "discrete" => DiscreteReader.Read(fields, fields.Own("discrete")!.Value, MostOutcomes),
            "poisson" => new PoissonNeed(Mean(fields)),
            _ => new PoissonNeed(1),
        };
    }

    private static double Mean(JsonFields fields)
    {
        const double most = 1e7;
        IReadOnlyList<double> listed = fields.IsList("poisson") ? fields.Numbers("poisson", DemandReader.Least, most, null, 1) : [];
        return listed.Count == 1 ? listed[0] : fields.Number("poisson", DemandReader.Least, most, required: true)!.Value;
    }

    /// <summary>Mean and standard deviation; null, with a problem, when they are not two.</summary>
    private static (double Mean, double Deviation)? Pair(JsonFields fields, string name, double min, double max)
    {
        if (fields.Own(name) is not { ValueKind: JsonValueKind.Array } list || list.GetArrayLength() != 2)
        {
            fields.Problems.Add(
                fields.PathOf(name),
                "a mean and a standard deviation are needed here",
                JsonFields.Told(fields.Own(name)!.Value),
                "[50, 8]"
            );
            return null;
        }

        string path = fields.PathOf(name);
        return (
            NumberLists.One(fields, list[0], path + "[0]", min, max),
            NumberLists.One(fields, list[1], path + "[1]", DemandReader.Least, max)
        );
    }
}
