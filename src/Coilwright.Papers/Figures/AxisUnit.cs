using System.Collections.Frozen;

namespace Coilwright.Papers.Figures;

/// <summary>The unit of an axis: what SI values are divided by, and how it is written beside the quantity.</summary>
/// <param name="Si">One of it in SI.</param>
/// <param name="Name">As it is written; empty for a bare number.</param>
public readonly record struct AxisUnit(double Si, string Name)
{
    private static readonly FrozenDictionary<string, AxisUnit> s_own = new Dictionary<string, AxisUnit>
    {
        ["V·s/m"] = new(1e-3, "mV per m/s"),
        ["Wb"] = new(1e-6, "µWb"),
        ["m²"] = new(1e-4, "cm²"),
        ["m³"] = new(1e-6, "cm³"),
        ["m"] = new(1e-3, "mm"),
        ["T"] = new(1e-3, "mT"),
        ["kg"] = new(1e-3, "g"),
        ["dB"] = new(1, "dB"),
        ["1"] = new(1, ""),
        [""] = new(1, ""),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly (double Si, string Prefix)[] s_prefixes =
    [
        (1e6, "M"),
        (1e3, "k"),
        (1, ""),
        (1e-3, "m"),
        (1e-6, "µ"),
        (1e-9, "n"),
        (1e-12, "p"),
    ];

    /// <summary>
    /// The unit that suits the largest value: kΩ for 6,200 Ω; lengths in mm, fields in mT, masses in g, whatever their size.
    /// </summary>
    /// <param name="unit">The SI unit.</param>
    /// <param name="values">What the axis holds.</param>
    public static AxisUnit For(string unit, IEnumerable<double> values)
    {
        if (s_own.TryGetValue(unit, out AxisUnit own))
        {
            return own;
        }

        double largest = values.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(1).Max();
        (double si, string prefix) = s_prefixes.FirstOrDefault(one => largest >= one.Si, (1, ""));
        return new AxisUnit(si, prefix + unit);
    }

    /// <summary>Quantity and unit, as an axis is named; a number without a unit says so.</summary>
    public string Beside(string quantity) => $"{char.ToUpperInvariant(quantity[0])}{quantity[1..]}, {(Name.Length > 0 ? Name : "no unit")}";
}
