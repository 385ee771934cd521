using System.Globalization;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Says how big a cause is, in workshop words.</summary>
internal static class CauseFormatter
{
    /// <summary>Where no single cause moves the readings as they were read.</summary>
    public const string Disagree = "the readings do not agree: no single cause explains both; read both again";

    /// <summary>A cause in words that stand by themselves.</summary>
    /// <param name="cause">Its key.</param>
    /// <param name="size">How big, as <see cref="CauseTable.Term.Size"/>.</param>
    /// <param name="offset">ln of the ohms it adds.</param>
    /// <param name="evidence">The coil's readings.</param>
    /// <param name="disagree">Whether more than one reading is off.</param>
    public static string Detail(string cause, double size, double offset, CoilEvidence evidence, bool disagree) =>
        cause switch
        {
            "thin-wire" => string.Create(
                CultureInfo.InvariantCulture,
                $"thin wire: about {Math.Abs(offset) * 100:0.#} % more ohms per metre"
            ),
            "thick-wire" => string.Create(
                CultureInfo.InvariantCulture,
                $"thick wire: about {Math.Abs(offset) * 100:0.#} % fewer ohms per metre"
            ),
            "stretched-wire" => string.Create(
                CultureInfo.InvariantCulture,
                $"stretched wire: about {Math.Abs(offset) * 100:0.#} % more ohms per metre"
            ),
            "miscount" => Miscount(size, evidence.NominalTurns),
            "warm-coil" => string.Create(CultureInfo.InvariantCulture, $"warm coil: about {size:0} °C warmer than entered"),
            "shorted-turns" => Shorted(size, evidence.NominalTurns),
            "broken-coupled" => "broken wire: the meter sees only the coil's stray capacitance",
            "high-resistance-joint" => string.Create(
                CultureInfo.InvariantCulture,
                $"bad joint: adds about {Significant(size * evidence.NominalOhm)} Ω"
            ),
            "coil-bridged" => "one coil is shorted out",
            "wired-parallel" => "the coils are wired in parallel",
            "wrong-gauge" => $"wire {Gauges(size)} too {(size > 0 ? "thin" : "thick")}",
            "wrong-core" => "wrong core: resistance as expected, inductance not",
            "meter-error" => disagree ? Disagree : "wrong reading: range, leads or zero of the meter",
            _ => "",
        };

    private static string Gauges(double size) =>
        Math.Abs(size) switch
        {
            < 0.75 => "half a gauge",
            < 1.5 => "one gauge",
            _ => "two gauges",
        };

    /// <summary>A count of turns to two digits; per cent when the recipe's turns are not known.</summary>
    private static string Miscount(double part, double nominalTurns)
    {
        const double Near = 0.03;
        if (Math.Abs(part + 0.5) < Near)
        {
            return "wrong turn count: about half the turns, stopped early";
        }

        if (Math.Abs(part - 1) < Near)
        {
            return "wrong turn count: about twice the turns";
        }

        string word = part > 0 ? "too many" : "too few";
        return nominalTurns > 0
            ? string.Create(CultureInfo.InvariantCulture, $"wrong turn count: about {Significant(Math.Abs(part) * nominalTurns)} {word}")
            : string.Create(CultureInfo.InvariantCulture, $"wrong turn count: about {Math.Abs(part) * 100:0.#} % {word}");
    }

    /// <summary>Shorted turns to the nearest five from twenty on: their number is hardly known to a tenth.</summary>
    private static string Shorted(double part, double nominalTurns)
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
