namespace Coilwright.Analysis.Diagnosis;

/// <summary>One coil's readings under every size of every cause, for every offset that its spool may have.</summary>
internal sealed class WeighedCoil
{
    /// <summary>Logarithms this far below the best count as nothing.</summary>
    private const double Nothing = -45;

    /// <summary>No coil may rule an offset out by itself: it may have a fault that nobody thought of.</summary>
    private const double LeastLikelihood = 1e-30;

    private readonly CoilEvidence _evidence;
    private readonly CommonOffset _henry,
        _quality;
    private readonly double? _logOhm;
    private readonly (double Base, double Mean, double Precision, bool Follows)[] _terms;

    public WeighedCoil(CoilEvidence evidence, IReadOnlyList<CauseTerm> terms, CommonOffset henry, CommonOffset quality)
    {
        (_evidence, _henry, _quality) = (evidence, henry, quality);
        _logOhm = evidence.OhmAt20C is { } ohm ? Math.Log(ohm / evidence.NominalOhm) : null;
        (double Base, double Mean, double Precision, bool Follows)[] all = [.. terms.Select(term => Prepared(term, henry, quality))];
        double[] highest = [.. all.Select(Highest)];
        Largest = highest.Max();
        int[] matter = [.. Enumerable.Range(0, all.Length).Where(t => t == all.Length - 1 || highest[t] - Largest > Nothing)];
        Terms = [.. matter.Select(t => terms[t])];
        _terms = [.. matter.Select(t => all[t])];
    }

    /// <summary>The terms that can matter at any offset; "none" is the last.</summary>
    public IReadOnlyList<CauseTerm> Terms { get; }

    /// <summary>Logarithm of the likelihood at each offset of the grid, all causes together, up to a constant.</summary>
    /// <remarks>Only a coil that others learn from is asked for it, and it is most of the work.</remarks>
    /// <param name="from">The first offset worth weighing, by its place; those outside count as good as impossible.</param>
    /// <param name="to">The place behind the last.</param>
    public double[] LogLikelihood(int from, int to)
    {
        double[] logs = new double[SpoolPrior.Grid.Length];
        for (int g = 0; g < logs.Length; g++)
        {
            logs[g] = Math.Log(g >= from && g < to ? Math.Max(LeastLikelihood, WeightsAt(SpoolPrior.Grid[g]).Sum()) : LeastLikelihood);
        }

        return logs;
    }

    private double Largest { get; }

    /// <summary>Weight of each term at an offset, up to the same factor.</summary>
    public double[] WeightsAt(double offset)
    {
        double[] weights = new double[_terms.Length];
        for (int t = 0; t < weights.Length; t++)
        {
            (double rest, double mean, double precision, bool follows) = _terms[t];
            double log = rest - Largest;
            if (_logOhm is { } known && log > Nothing)
            {
                double off = known - mean - (follows ? offset : 0);
                log -= 0.5 * off * off * precision;
            }

            weights[t] = log > Nothing ? Math.Exp(log) : 0;
        }

        return weights;
    }

    /// <summary>How many of the readings lie where no coil without a fault of its own would.</summary>
    /// <param name="ohm">What the others say of the spool's ohms.</param>
    public int ReadingsOff(CommonOffset ohm) =>
        IsOff(_logOhm, ohm, CauseTerm.OhmScatter)
        + IsOff(Log(_evidence.InductanceRatio), _henry, CauseTerm.HenryScatter)
        + IsOff(Log(_evidence.QualityRatio), _quality, CauseTerm.QualityScatter);

    private static int IsOff(double? log, CommonOffset expected, double scatter) =>
        log is { } read && Math.Abs(read - expected.Mean) > 3 * Math.Sqrt(expected.Deviation * expected.Deviation + scatter * scatter)
            ? 1
            : 0;

    private static double? Log(double? ratio) => ratio is > 0 ? Math.Log(ratio.Value) : null;

    private (double, double, double, bool) Prepared(CauseTerm term, CommonOffset henry, CommonOffset quality)
    {
        double rest = Math.Log(term.Weight) + WithoutOhm(term, henry, quality),
            variance = term.Ohm.Deviation * term.Ohm.Deviation + Reading * Reading;
        return (_logOhm is null ? rest : rest - 0.5 * Math.Log(2 * Math.PI * variance), term.Ohm.Mean, 1 / variance, term.FollowsBatch);
    }

    /// <summary>The best that a term can come to on the grid.</summary>
    private double Highest((double Base, double Mean, double Precision, bool Follows) term)
    {
        double off = Math.Max(0, Math.Abs((_logOhm ?? term.Mean) - term.Mean) - (term.Follows ? SpoolPrior.Grid[^1] : 0));
        return term.Base - 0.5 * off * off * term.Precision;
    }

    /// <summary>Deviation of the reading: the meter's, and ±5 °C when nobody wrote a temperature down.</summary>
    private double Reading => _evidence.TemperatureKnown ? _evidence.OhmReading : 0.01;

    private double WithoutOhm(CauseTerm term, CommonOffset henry, CommonOffset quality)
    {
        double log = 0;
        if (_evidence.InductanceRatio is { } h)
        {
            log += LogNormal(Math.Log(h) - term.Henry.Mean - henry.Mean, term.Henry.Deviation, henry.Deviation);
        }

        if (_evidence.QualityRatio is { } q)
        {
            log += LogNormal(Math.Log(q) - term.Quality.Mean - quality.Mean, term.Quality.Deviation, quality.Deviation);
        }

        return _evidence.TurnsRatio is { } turns ? log + LogNormal(Math.Log(turns) - term.Turns.Mean, term.Turns.Deviation, 0.0005) : log;
    }

    private static double LogNormal(double off, double deviation, double more)
    {
        double variance = deviation * deviation + more * more;
        return -0.5 * (off * off / variance + Math.Log(2 * Math.PI * variance));
    }
}
