namespace Coilwright.Analysis.Diagnosis;

/// <summary>Brings a spool's offset and a coil's causes together.</summary>
internal sealed class Posterior
{
    /// <summary>A step of the ohms from one coil to the next that is no other spool, ln. Our assumption.</summary>
    private const double LeastStep = 0.008;

    private readonly CoilEvidence _evidence;
    private readonly WeighedCoil _coil;
    private readonly bool _namesSpool;
    private readonly Sum[] _faults;

    /// <summary>
    /// The coil without a fault of its own, as its spool is: for each of the spool's causes, and behind them thin and thick wire from a
    /// change on.
    /// </summary>
    private readonly Sum[] _spool = new Sum[SpoolPrior.Causes.Length + 2];
    private double _known,
        _moment,
        _square;

    private Posterior(CoilEvidence evidence, WeighedCoil coil, bool namesSpool)
    {
        (_evidence, _coil, _namesSpool) = (evidence, coil, namesSpool);
        _faults = new Sum[coil.Terms.Count];
    }

    /// <summary>The causes of one coil.</summary>
    /// <param name="evidence">Its readings.</param>
    /// <param name="coil">The same, weighed.</param>
    /// <param name="run">The coils of its spool.</param>
    /// <param name="place">Its place among them, or how many of them were wound before it, and whether it is one of them.</param>
    /// <param name="namesSpool">True where there are too few others to tell the spool's wire from the coil's own.</param>
    public static CoilDiagnosis Compute(
        CoilEvidence evidence,
        WeighedCoil coil,
        SpoolRun run,
        (int At, bool IsAmong) place,
        bool namesSpool
    )
    {
        Posterior posterior = new(evidence, coil, namesSpool);
        (double Weight, double[] Light, double? Before)[] models = [.. run.OthersOf(place.At, place.IsAmong)];
        double[] all = [.. SpoolPrior.Grid.Select((_, g) => models.Sum(model => model.Weight * model.Light[g]))];
        double least = 1e-12 * all.Max();
        for (int g = 0; g < all.Length; g++)
        {
            if (all[g] > least)
            {
                posterior.Add(g, all[g], models);
            }
        }

        return posterior.Conclude();
    }

    /// <summary>The faults at one offset, which do not ask why it is so; then the coil without one.</summary>
    private void Add(int place, double light, (double Weight, double[] Light, double? Before)[] models)
    {
        double offset = SpoolPrior.Grid[place];
        double[] weights = _coil.WeightsAt(offset),
            priors = SpoolPrior.WeightsAt(place, _evidence);
        double prior = priors.Sum() * light;
        for (int t = 0; t < weights.Length - 1; t++)
        {
            _faults[t] = _faults[t].And(prior * weights[t], offset);
        }

        foreach ((double weight, double[] own, double? before) in models)
        {
            AddSpool(offset, priors, weight * own[place] * weights[^1], before);
        }

        (_known, _moment, _square) = (_known + prior, _moment + prior * offset, _square + prior * offset * offset);
    }

    /// <summary>A coil with no fault of its own has what its spool has.</summary>
    private void AddSpool(double offset, double[] priors, double light, double? before)
    {
        double step = offset - (before ?? offset);
        if (Math.Abs(step) >= LeastStep)
        {
            int changed = SpoolPrior.Causes.Length + (step > 0 ? 0 : 1);
            _spool[changed] = _spool[changed].And(priors.Sum() * light, step);
            return;
        }

        for (int c = 0; c < priors.Length; c++)
        {
            _spool[c] = _spool[c].And(priors[c] * light, offset);
        }
    }

    private CoilDiagnosis Conclude()
    {
        WeightedCounts tally = Told();
        double mean = _moment / _known,
            deviation = Math.Sqrt(Math.Max(0, _square / _known - mean * mean));
        bool disagree = _coil.ReadingsOff(new CommonOffset(mean, deviation)) >= 2;
        IReadOnlyList<ProbableCause> causes = tally.Causes(_evidence, disagree);
        return new CoilDiagnosis(causes, NextReadings.Compute(_evidence, tally)) { Group = WeightedCounts.Group(causes) };
    }

    private WeightedCounts Told()
    {
        WeightedCounts tally = new();
        CauseTerm good = _coil.Terms[^1];
        for (int t = 0; t < _faults.Length - 1; t++)
        {
            CauseTerm term = _coil.Terms[t];
            tally.Add(term.Cause, _faults[t].Weight, term, _faults[t].Offset, term.Ohm.Mean);
        }

        for (int c = 0; c < _spool.Length; c++)
        {
            bool changed = c >= SpoolPrior.Causes.Length,
                wire = changed || c is 1 or 2;
            string cause = changed ? SpoolPrior.Causes[c - SpoolPrior.Causes.Length + 1] : SpoolPrior.Causes[c];
            tally.Add(
                changed || _namesSpool ? cause : "none",
                _spool[c].Weight,
                wire ? good with { Wire = new LogSpread(_spool[c].Offset, 0.01) } : good,
                _spool[c].Offset,
                _spool[c].Offset,
                changed
            );
        }

        return tally;
    }

    /// <summary>A weight with the mean offset that it was given at.</summary>
    private readonly record struct Sum(double Weight, double Moment)
    {
        public double Offset => Weight > 0 ? Moment / Weight : 0;

        public Sum And(double weight, double offset) => new(Weight + weight, Moment + weight * offset);
    }
}
