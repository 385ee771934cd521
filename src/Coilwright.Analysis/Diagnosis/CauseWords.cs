using System.Globalization;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Says how big a cause is, in workshop words.</summary>
internal static class CauseWords
{
    public static string Detail(string cause, double size, double offset, CoilEvidence evidence) => cause switch
    {
        "thin-wire" or "thick-wire" => string.Create(CultureInfo.InvariantCulture, $"about {Math.Abs(offset) * 100:0.#} % in ohms per metre; measure the spool"),
        "stretched-wire" => string.Create(CultureInfo.InvariantCulture, $"about {Math.Abs(offset) * 100:0.#} % in ohms per metre; check the tension"),
        "miscount" => Turns(size, size > 0 ? "too many" : "too few", evidence.NominalTurns),
        "warm-coil" => string.Create(CultureInfo.InvariantCulture, $"about {size:0} °C warmer than taken; read it again when it has cooled"),
        "shorted-turns" => Shorted(size, evidence.NominalTurns),
        "broken-coupled" => "broken wire, coupling through capacitance",
        "high-resistance-joint" => string.Create(CultureInfo.InvariantCulture, $"about {Significant(size * evidence.NominalOhm)} Ω in series; reheat the joints and read again"),
        "coil-bridged" => "one coil bridged",
        "wired-parallel" => "wired in parallel",
        "wrong-gauge" => string.Create(CultureInfo.InvariantCulture, $"about {Math.Abs(size):0.#} AWG too {(size > 0 ? "thin" : "thick")}"),
        "wrong-core" => "ohms as wanted, inductance not: check poles and magnets",
        "meter-error" => "check range, leads and zero, and read again",
        _ => "",
    };

    /// <summary>A count of turns to two digits; per cent when the recipe's turns are not known.</summary>
    private static string Turns(double part, string word, double nominalTurns) => nominalTurns > 0
        ? string.Create(CultureInfo.InvariantCulture, $"about {Significant(Math.Abs(part) * nominalTurns)} turns {word}")
        : string.Create(CultureInfo.InvariantCulture, $"about {Math.Abs(part) * 100:0.#} % of the turns {word}");

    /// <summary>Shorted turns to the nearest five from twenty on: their number is hardly known to a tenth.</summary>
    private static string Shorted(double part, double nominalTurns)
    {
        double turns = part * nominalTurns;
        return nominalTurns > 0
            ? $"about {(turns >= 20 ? Significant(Math.Round(turns / 5) * 5) : Significant(turns))} shorted turns suspected"
            : string.Create(CultureInfo.InvariantCulture, $"about {part * 100:0.#} % shorted turns suspected");
    }

    private static string Significant(double value)
    {
        double step = Math.Max(1, Math.Pow(10, Math.Floor(Math.Log10(Math.Max(value, 1))) - 1));
        return (Math.Round(value / step) * step).ToString("0", CultureInfo.InvariantCulture);
    }
}
