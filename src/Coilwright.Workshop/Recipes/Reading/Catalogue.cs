using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Names that a recipe may use for wire, enamel and materials, and what stands behind them.</summary>
internal static partial class Catalogue
{
    public const string Air = "air";

    /// <summary>Relative permittivity of enamels: polyurethane 3.7 read (one data set); the others 3 to 4, from memory.</summary>
    private static readonly FrozenDictionary<string, Estimate> s_enamels = new Dictionary<string, Estimate>
    {
        ["plain-enamel"] = new(3.5, 3, 4, Basis.Assumed),
        ["polyvinyl-acetal"] = new(3.35, 3, 3.7, Basis.Assumed),
        ["polyurethane"] = new(3.7, 3.4, 4, Basis.Assumed),
        ["polyester"] = new(3.5, 3, 4, Basis.Assumed),
        ["polyester-imide"] = new(3.6, 3, 4, Basis.Assumed),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static IReadOnlyCollection<string> Insulations { get; } = [.. s_enamels.Keys.Order(StringComparer.Ordinal)];
    public static IReadOnlyCollection<string> Materials { get; } = [.. MaterialTable.ByName.Keys.Order(StringComparer.Ordinal)];
    public static string GaugeRange => "AWG 34 to AWG 50 in halves, or 0.030 mm to 0.160 mm of the metric series";

    /// <summary>True when the gauge is in a table; otherwise the nearest one.</summary>
    public static bool KnowsGauge(string gauge, out string? nearest)
    {
        string key = Key(gauge);
        bool known = WireTable.DiametersUm.ContainsKey(key);
        nearest = known ? null : NearestGauge(key);
        return known;
    }

    public static MaterialValues Material(string name) => MaterialTable.ByName[name];

    public static Estimate EnamelPermittivity(string insulation) => s_enamels[insulation];

    public static WireModel Wire(string gauge, string build, string insulation)
    {
        double[] um = WireTable.DiametersUm[Key(gauge)];
        int overall = build is "heavy" or "grade 2" ? 6 : 3;
        return new WireModel
        {
            Gauge = Key(gauge),
            Insulation = insulation,
            BareDiameterM = Between(um, 0),
            OverallDiameterM = Between(um, overall),
            EnamelPermittivity = EnamelPermittivity(insulation),
        };
    }

    private static Estimate Between(double[] um, int at) => new(um[at + 1] * 1e-6, um[at] * 1e-6, um[at + 2] * 1e-6, Basis.Assumed);

    /// <summary>The table's name of a gauge: "42 awg" is "AWG 42", "63 µm" is "0.063 mm".</summary>
    private static string Key(string gauge)
    {
        Match awg = Awg().Match(gauge);
        if (awg.Success)
        {
            string number = awg.Groups[1].Success ? awg.Groups[1].Value : awg.Groups[2].Value;
            return "AWG " + number.Replace(',', '.').Replace(".0", "", StringComparison.Ordinal);
        }

        return QuantityText.TryParse(gauge, QuantityKind.Length, unitRequired: true, out Entered size, out _)
            ? (size.Si * 1000).ToString("0.000", CultureInfo.InvariantCulture) + " mm"
            : gauge.Trim();
    }

    private static string? NearestGauge(string key)
    {
        bool metric = key.EndsWith(" mm", StringComparison.Ordinal);
        string digits = metric ? key[..^3] : key.Replace("AWG ", "", StringComparison.OrdinalIgnoreCase);
        if (!double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out double wanted))
        {
            return NearestName.Of(key, WireTable.DiametersUm.Keys);
        }

        return WireTable.DiametersUm.Keys.Where(name => name.EndsWith(" mm", StringComparison.Ordinal) == metric)
            .MinBy(name => Math.Abs(double.Parse(metric ? name[..^3] : name[4..], NumberStyles.Float, CultureInfo.InvariantCulture) - wanted));
    }

    [GeneratedRegex(@"^\s*(?:(?:awg|ga)\s*#?\s*(\d{1,2}(?:[.,][05])?)|(\d{1,2}(?:[.,][05])?)\s*awg)\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Awg();
}
