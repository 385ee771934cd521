using System.Collections.Frozen;
using System.Globalization;

namespace Coilwright.Workshop.Entry;

public static partial class QuantityParser
{
    /// <summary>Units a value is written in, largest first; the first in which it is at least one is taken, else the last.</summary>
    private static readonly FrozenDictionary<QuantityKind, string[]> s_written = new Dictionary<QuantityKind, string[]>
    {
        [QuantityKind.Length] = ["m", "mm"],
        [QuantityKind.Resistance] = ["MΩ", "kΩ", "Ω"],
        [QuantityKind.Inductance] = ["H", "mH", "µH"],
        [QuantityKind.Capacitance] = ["µF", "nF", "pF"],
        [QuantityKind.Frequency] = ["MHz", "kHz", "Hz"],
        [QuantityKind.Force] = ["N", "mN"],
        [QuantityKind.Mass] = ["kg", "g", "mg"],
        [QuantityKind.Conductivity] = ["MS/m", "S/m"],
        [QuantityKind.FluxDensity] = ["T", "mT", "µT"],
        [QuantityKind.CapacitancePerLength] = ["nF/m", "pF/m"],
        [QuantityKind.Voltage] = ["V", "mV", "µV"],
        [QuantityKind.Duration] = ["h", "min", "s"],
    }.ToFrozenDictionary();

    /// <summary>Writes a value with the unit that suits its size, for example "7.43 kΩ"; invariant culture.</summary>
    /// <param name="si">The value in the unit of <see cref="QuantityKind"/>.</param>
    /// <param name="kind">What it measures.</param>
    /// <param name="significantDigits">Digits shown, 1…15; digits before the decimal point are never rounded away.</param>
    public static string Format(double si, QuantityKind kind, int significantDigits = 3)
    {
        string[] symbols = s_written.GetValueOrDefault(kind) ?? [UnitTable.Of(kind)[0].Symbol];
        foreach (string symbol in symbols)
        {
            double value = UnitTable.Find(kind, symbol)!.FromSi(si);
            if (Math.Abs(Math.Round(value, DecimalsFor(value, significantDigits))) >= 1)
            {
                return FormatIn(si, kind, symbol, significantDigits);
            }
        }

        return FormatIn(si, kind, si < 0 || si > 0 ? symbols[^1] : UnitTable.Of(kind)[0].Symbol, significantDigits);
    }

    /// <summary>Writes a value in a stated unit.</summary>
    /// <exception cref="ArgumentException">The unit does not belong to the kind.</exception>
    public static string FormatIn(double si, QuantityKind kind, string unit, int significantDigits = 3)
    {
        Unit found = UnitTable.Find(kind, unit) ?? throw new ArgumentException($"'{unit}' is no unit of {kind}.", nameof(unit));
        double value = found.FromSi(si);
        if (!double.IsFinite(value))
        {
            return "–";
        }

        int decimals = IsCount(kind) ? CountDecimals(value) : DecimalsFor(value, significantDigits);
        double rounded = Math.Round(value, decimals);
        return rounded.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " " + found.Symbol;
    }

    /// <summary>
    /// A whole number of metres or ohms with thousands parted by a narrow space, which is read back as nothing else; a comma there could be
    /// a decimal one.
    /// </summary>
    public static string Grouped(double value) => value.ToString("#,##0", CultureInfo.InvariantCulture).Replace(',', '\u202F');

    /// <summary>Turns and turns per minute: usually whole, so that "8.000" and "8,000" are eight thousand.</summary>
    private static bool IsCount(QuantityKind kind) => kind is QuantityKind.Turns or QuantityKind.Speed;

    /// <summary>Never three decimals, which would be read back as thousands.</summary>
    private static int CountDecimals(double value) => Math.Abs(value - Math.Round(value)) < 0.005 ? 0 : 2;

    private static int DecimalsFor(double value, int significantDigits)
    {
        double size = Math.Abs(value);
        int magnitude = size > 0 && double.IsFinite(size) ? (int)Math.Floor(Math.Log10(size)) : 0;
        int decimals = Math.Clamp(significantDigits - 1 - magnitude, 0, 15);
        double next = Math.Pow(10, magnitude + 1);
        return decimals > 0 && Math.Round(size, decimals) >= next ? decimals - 1 : decimals;
    }
}
