using System.Globalization;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Says how big a cause is, in workshop words that stand by themselves.</summary>
internal static class CauseFormatter
{
    /// <summary>Where no single cause moves the readings as they were read.</summary>
    public const string Disagree = "the readings do not agree: no single cause explains both; read both again";

    public static string OhmsPerMetre(string what, double offset)
    {
        string side = offset < 0 ? "fewer" : "more";
        return string.Create(CultureInfo.InvariantCulture, $"{what}: about {Math.Abs(offset) * 100:0.#} % {side} ohms per metre");
    }

    public static string Warm(double kelvin) =>
        string.Create(CultureInfo.InvariantCulture, $"warm coil: about {kelvin:0} °C warmer than entered");

    public static string Joint(double ohm) => $"bad joint: adds about {Significant(ohm)} Ω";

    public static string Across(double ohm) => $"a finger or flux across the clips: about {Significant(ohm / 1000)} kΩ beside the coil";

    public static string Gauges(double size)
    {
        string many = Math.Abs(size) switch
        {
            < 0.75 => "half a gauge",
            < 1.5 => "one gauge",
            _ => "two gauges",
        };
        return $"wire {many} too {(size > 0 ? "thin" : "thick")}";
    }

    /// <summary>A count of turns to two digits; per cent when the recipe's turns are not known.</summary>
    public static string Miscount(double part, double nominalTurns)
    {
        const double Near = 0.03;
        if (Math.Abs(part + 0.5) < Near)
        {
            return "wrong turn count: about half the turns, stopped early";
        }

        if (Math.Abs(part - 1) < 3 * Near)
        {
            return "wrong turn count: about twice the turns";
        }

        string word = part > 0 ? "too many" : "too few";
        return nominalTurns > 0
            ? string.Create(CultureInfo.InvariantCulture, $"wrong turn count: about {Significant(Math.Abs(part) * nominalTurns)} {word}")
            : string.Create(CultureInfo.InvariantCulture, $"wrong turn count: about {Math.Abs(part) * 100:0.#} % {word}");
    }

    /// <summary>Shorted turns to the nearest five from twenty on: their number is hardly known to a tenth.</summary>
    public static string Shorted(double part, double nominalTurns)
    {
        if (!(nominalTurns > 0))
        {
            return string.Create(CultureInfo.InvariantCulture, $"about {part * 100:0.#} % shorted turns suspected");
        }

        double turns = part * nominalTurns,
            told = turns >= 20 ? Math.Round(turns / 5) * 5 : turns;
        return $"about {Significant(told)} shorted turns suspected";
    }

    private static string Significant(double value)
    {
        double step = Math.Max(1, Math.Pow(10, Math.Floor(Math.Log10(Math.Max(value, 1))) - 1));
        return (Math.Round(value / step) * step).ToString("0", CultureInfo.InvariantCulture);
    }
}
