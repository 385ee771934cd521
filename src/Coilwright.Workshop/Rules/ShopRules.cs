using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes.Sizes;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Rules;

/// <summary>
/// What the shop decides for itself: serials, limits of plastics, ink, tests, leads. What it leaves out is common practice or our
/// assumption, and says so.
/// </summary>
public sealed record ShopRules
{
    /// <summary>Largest deviations from the golden piece unless the shop says others, parts of one. Our assumption, no source.</summary>
    public static readonly IReadOnlyDictionary<string, double> UsualTolerances = new Dictionary<string, double>(StringComparer.Ordinal)
    {
        [QuantityKey.DcResistance] = 0.03,
        [QuantityKey.Inductance] = 0.04,
        [QuantityKey.Q] = 0.08,
        [QuantityKey.AcResistance] = 0.10,
        [QuantityKey.LoadedPeak] = 0.04,
    };

    /// <summary>Pattern of serials.</summary>
    public SerialPattern Serials { get; init; } = new("{yy}{ww}-{n:000}");

    /// <summary>Where the shop's clock hangs.</summary>
    public TimeZoneInfo Zone { get; init; } = TimeZoneInfo.Local;

    /// <summary>Hottest bath that each plastic bears, °C, by material.</summary>
    public IReadOnlyDictionary<string, double> BathLimitsC { get; init; } =
        new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);

    /// <summary>Hottest bath that a plastic bears, °C, by its key or label on either side; null where the shop has stated none.</summary>
    public double? BathLimitC(string material) =>
        BathLimitsC
            .Where(one => string.Equals(KeyLabels.Of(one.Key), KeyLabels.Of(material), StringComparison.OrdinalIgnoreCase))
            .Select(one => (double?)one.Value)
            .FirstOrDefault();

    /// <summary>Ink: pot life of its sheet. 8 h, common practice, no source [CureRate]; a shop states its own sheet's.</summary>
    public TimeSpan PotLife { get; init; } = TimeSpan.FromHours(8);

    /// <summary>Ink: full cure of its sheet. 6 days at 20 °C, common practice, no source [CureRate].</summary>
    public TimeSpan FullCure { get; init; } = TimeSpan.FromDays(6);

    /// <summary>Ink: how warmth counts.</summary>
    public CureRule Cure { get; init; } = new();

    /// <summary>Largest deviations from the golden piece, parts of one, by quantity.</summary>
    public IReadOnlyDictionary<string, double> TestTolerances { get; init; } = UsualTolerances;

    /// <summary>Quantities without which no piece passes.</summary>
    public IReadOnlyList<string> TestNeeds { get; init; } = [QuantityKey.DcResistance];

    /// <summary>Largest spread of the poles' fields, a part of their mean.</summary>
    public double GaussSpread { get; init; } = PoleReading.UsualSpread;

    /// <summary>
    /// How far a charge may lie from the level a recipe asks for, a part of it, where the recipe's step states none; null when the shop
    /// states none: then a level must be met as entered, and the field at the final test is shown and not judged.
    /// </summary>
    public double? ChargeTolerance { get; init; }

    /// <summary>How well lengths are known for which a recipe states no ±.</summary>
    public SizeRules Sizes { get; init; } = SizeRules.Usual;

    /// <summary>The shop's own lead colours.</summary>
    public IReadOnlyList<LeadColour> LeadColours { get; init; } = [];

    /// <summary>Instruments that answer by themselves.</summary>
    public IReadOnlyList<ShopInstrument> Instruments { get; init; } = [];

    /// <summary>Where frozen limits of charts were taken anew; of several for one chart the last holds.</summary>
    public IReadOnlyList<ChartLimits> ChartLimits { get; init; } = [];

    /// <summary>Colour of a lead by the shop's table; null when the table does not say.</summary>
    public string? ColourOf(string coil, string end) =>
        (
            LeadColours.FirstOrDefault(lead => lead.Coil == coil && lead.End == end)
            ?? LeadColours.FirstOrDefault(lead => lead.Coil == "*" && lead.End == end)
        )?.Colour;
}
