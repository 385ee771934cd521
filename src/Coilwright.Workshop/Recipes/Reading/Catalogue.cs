using Coilwright.Physics;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Wire;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Names that a recipe may use for wire, enamel and materials; what stands behind them is the engine's.</summary>
internal static class Catalogue
{
    public const string Air = "air";
    public const string PlainEnamel = "plain-enamel";

    public static IReadOnlyCollection<string> Insulations { get; } = [.. WireCatalogue.Standard.Insulations.Select(enamel => enamel.Key)];
    public static IReadOnlyCollection<string> Builds { get; } = ["single", "heavy", "triple", "quad", "grade-1", "grade-2", "grade-3"];
    public static IReadOnlyCollection<string> Materials { get; } = [.. MaterialCatalogue.All.Select(material => material.Key)];
    public static IReadOnlyCollection<string> Insulators { get; } =
    [.. MaterialCatalogue.All.Where(material => material.RelativePermittivity is not null).Select(material => material.Key)];
    public static string GaugeRange => "AWG 34 to AWG 50 in halves, or 0.030 mm to 0.160 mm of the metric series";

    /// <summary>The size in the tables, or null with the nearest one.</summary>
    public static WireSize? Gauge(string gauge, out string? nearest)
    {
        WireSize? size = WireCatalogue.Standard.Find(gauge);
        nearest = size is null && WireCatalogue.Standard.NearestSizes(gauge) is [string first, ..] ? first : null;
        return size;
    }

    public static Material Material(string name) => Known(MaterialCatalogue.Find(name), name);

    public static Estimate EnamelPermittivity(string insulation) =>
        Known(WireCatalogue.Standard.FindInsulation(insulation), insulation).Permittivity;

    public static WireModel Wire(string gauge, string build, string insulation) =>
        WireCatalogue.Standard.ModelFor(gauge, build, insulation);

    private static T Known<T>(T? found, string name)
        where T : class => found ?? throw new ArgumentException($"'{name}' is in no table; the reader should have said so.", nameof(name));
}
