namespace Coilwright.Analysis.Diagnosis;

/// <summary>One coil's readings under every size of every cause, for every offset that its spool may have.</summary>
internal sealed class WeighedCoil
{
    private readonly CoilEvidence _evidence;
    private readonly double[] _rest;

    public WeighedCoil(CoilEvidence evidence, IReadOnlyList<CauseTable.Term> terms, CommonOffset henry, CommonOffset quality)
    {
        _evidence = evidence;
        Terms = terms;
        _rest = [.. terms.Select(term => Math.Log(term.Weight) + WithoutOhm(term, henry, quality))];
        Largest = _rest.Max();
        Likelihood = [.. SpoolPrior.Grid.Select(offset => At(offset).Sum())];
    }

    public IReadOnlyList<CauseTable.Term> Terms { get; }

    /// <summary>Likelihood of the readings at each offset of the grid, all causes together, up to a factor.</summary>
    public double[] Likelihood { get; }

    private double Largest { get; }

    /// <summary>Weight of each term at an offset, up to the same factor.</summary>
    public double[] At(double offset)
    {
        double[] weights = new double[_rest.Length];
        double? x = _evidence.OhmAt20C is { } ohm ? Math.Log(ohm / _evidence.NominalOhm) : null;
        for (int t = 0; t < weights.Length; t++)
        {
            CauseTable.Term term = Terms[t];
            double log = _rest[t] - Largest;
            if (x is { } known && log > -60)
            {
                log += LogNormal(known - term.Ohm.Mean - (term.FollowsBatch ? offset : 0), term.Ohm.Deviation, Reading);
            }

            weights[t] = Math.Exp(log);
        }

        return weights;
    }

    /// <summary>Deviation of the reading: the meter's, and ±5 °C when nobody wrote a temperature down.</summary>
    private double Reading => _evidence.TemperatureKnown ? _evidence.OhmReading : 0.01;

    private double WithoutOhm(CauseTable.Term term, CommonOffset henry, CommonOffset quality)
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
