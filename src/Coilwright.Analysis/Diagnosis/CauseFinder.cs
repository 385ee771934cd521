using System.Globalization;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Weighs what may be wrong with a coil against its readings.</summary>
/// <remarks>
/// A first model. Bayes' rule over a short list of causes; each is a mixture of normal distributions in the logarithms of resistance, inductance, Q and
/// counted turns, as <see cref="CauseTable"/> states them. How a cause moves a reading is arithmetic (R as the length, L as the square of the turns);
/// how often it happens and how much it scatters is our assumption and has no source. It does not know the winding's geometry, and it does not learn yet.
/// </remarks>
public static class CauseFinder
{
    /// <summary>Causes less likely than this are not told.</summary>
    public const double LeastTold = 0.01;

    /// <summary>Probable causes, most probable first; empty when nothing was measured.</summary>
    public static IReadOnlyList<ProbableCause> Find(CoilEvidence evidence)
    {
        if (evidence.Open)
        {
            return [new ProbableCause("open", 0.95, "reheat the joints first"), new ProbableCause("meter-error", 0.05, "a lead off its clip")];
        }

        if (evidence is { OhmAt20C: null, InductanceRatio: null, QualityRatio: null })
        {
            return [];
        }

        List<(string Name, double Weight, double Size)> weighed = [];
        CauseTable.Hypothesis[] causes = [.. CauseTable.Of(evidence)];
        double[][] logs = [.. causes.Select(cause => cause.Terms.Select(term => Math.Log(cause.Prior * term.Weight) + LogLikelihood(term, evidence)).ToArray())];
        double largest = logs.Max(terms => terms.Max());
        for (int c = 0; c < causes.Length; c++)
        {
            double[] weights = [.. logs[c].Select(log => Math.Exp(log - largest))];
            double weight = weights.Sum();
            double size = weight > 0 ? weights.Zip(causes[c].Terms, (share, term) => share * term.Size).Sum() / weight : 0;
            weighed.Add((causes[c].Name, weight, size));
        }

        double total = weighed.Sum(one => one.Weight);
        return [.. weighed.Where(one => one.Weight >= LeastTold * total).OrderByDescending(one => one.Weight).Select(one => new ProbableCause(one.Name, one.Weight / total, Detail(one.Name, one.Size, evidence)))];
    }

    private static double LogLikelihood(CauseTable.Term term, CoilEvidence evidence)
    {
        double log = 0;
        if (evidence.OhmAt20C is { } ohm)
        {
            log += LogNormal(Math.Log(ohm / evidence.NominalOhm), term.Ohm, evidence.OhmSpread);
        }

        if (evidence.InductanceRatio is { } henry)
        {
            log += LogNormal(Math.Log(henry), term.Henry, evidence.InductanceSpread);
        }

        if (evidence.QualityRatio is { } quality)
        {
            log += LogNormal(Math.Log(quality), term.Quality, 0.03);
        }

        return evidence.TurnsRatio is { } turns ? log + LogNormal(Math.Log(turns), term.Turns, 0.0005) : log;
    }

    private static double LogNormal(double x, CauseTable.Spread expected, double readingSpread)
    {
        double variance = expected.Deviation * expected.Deviation + readingSpread * readingSpread, off = x - expected.Mean;
        return -0.5 * (off * off / variance + Math.Log(2 * Math.PI * variance));
    }

    private static string Detail(string cause, double size, CoilEvidence evidence) => cause switch
    {
        "thin-wire" or "thick-wire" => string.Create(CultureInfo.InvariantCulture, $"about {Math.Abs(Math.Log((evidence.OhmAt20C ?? evidence.NominalOhm) / evidence.NominalOhm)) * 100:0.#} % in ohms per metre; measure the spool"),
        "miscount" => Turns(size, size > 0 ? "too many" : "too few", evidence.NominalTurns),
        "warm-coil" => string.Create(CultureInfo.InvariantCulture, $"about {size:0} °C warmer than taken; read it again when it has cooled"),
        "shorted-turns" => Turns(size, "shorted", evidence.NominalTurns),
        "broken-coupled" => "broken wire, coupling through capacitance",
        "high-resistance-joint" => "reheat the joints and read again",
        "coil-bridged" => "one coil bridged",
        "wired-parallel" => "wired in parallel",
        "wrong-gauge" => string.Create(CultureInfo.InvariantCulture, $"about {Math.Abs(size):0.#} AWG too {(size > 0 ? "thin" : "thick")}"),
        "meter-error" => "check range, leads and zero, and read again",
        _ => "",
    };

    /// <summary>A count of turns to two digits; per cent when the recipe's turns are not known.</summary>
    private static string Turns(double part, string word, double nominalTurns)
    {
        double turns = Math.Abs(part) * nominalTurns;
        double step = Math.Max(1, Math.Pow(10, Math.Floor(Math.Log10(Math.Max(turns, 1))) - 1));
        return nominalTurns > 0
            ? string.Create(CultureInfo.InvariantCulture, $"about {Math.Round(turns / step) * step:0} turns {word}")
            : string.Create(CultureInfo.InvariantCulture, $"about {Math.Abs(part) * 100:0.#} % of the turns {word}");
    }
}
