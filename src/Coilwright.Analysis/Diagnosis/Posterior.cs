namespace Coilwright.Analysis.Diagnosis;

/// <summary>Brings a spool's offset and a coil's causes together.</summary>
internal static class Posterior
{
    /// <summary>The causes of one coil.</summary>
    /// <param name="evidence">Its readings.</param>
    /// <param name="coil">The same, weighed.</param>
    /// <param name="shared">Log likelihood of the spool's coils at each offset of the grid.</param>
    /// <param name="isAmong">True when this coil is one of those; it is taken out, for it must not vouch for itself.</param>
    public static CoilDiagnosis Compute(CoilEvidence evidence, WeighedCoil coil, double[] shared, bool isAmong)
    {
        double[] others = [.. shared.Select((log, g) => isAmong ? log - Math.Log(coil.Likelihood[g]) : log)];
        double largest = others.Max(),
            known = 0,
            moment = 0,
            square = 0;
        Sum[] faults = new Sum[coil.Terms.Count],
            spool = new Sum[SpoolPrior.Causes.Length];
        for (int g = 0; g < SpoolPrior.Grid.Length; g++)
        {
            double light = Math.Exp(others[g] - largest);
            if (light > 1e-12)
            {
                Add(faults, spool, coil, g, light, evidence);
                double prior = SpoolPrior.WeightsAt(g, evidence).Sum() * light,
                    offset = SpoolPrior.Grid[g];
                (known, moment, square) = (known + prior, moment + prior * offset, square + prior * offset * offset);
            }
        }

        WeightedCounts tally = Told(coil, faults, spool);
        double mean = moment / known,
            deviation = Math.Sqrt(Math.Max(0, square / known - mean * mean));
        bool disagree = coil.ReadingsOff(new CommonOffset(mean, deviation)) >= 2;
        return new CoilDiagnosis(tally.Causes(evidence, disagree), NextReadings.Compute(evidence, tally));
    }

    /// <summary>A coil with no fault of its own has what its spool has.</summary>
    private static void Add(Sum[] faults, Sum[] spool, WeighedCoil coil, int place, double light, CoilEvidence evidence)
    {
        double offset = SpoolPrior.Grid[place];
        double[] weights = coil.WeightsAt(offset),
            priors = SpoolPrior.WeightsAt(place, evidence);
        double prior = priors.Sum() * light;
        for (int t = 0; t < weights.Length - 1; t++)
        {
            faults[t] = faults[t].And(prior * weights[t], offset);
        }

        for (int c = 0; c < priors.Length; c++)
        {
            spool[c] = spool[c].And(priors[c] * light * weights[^1], offset);
        }
    }

    private static WeightedCounts Told(WeighedCoil coil, Sum[] faults, Sum[] spool)
    {
        WeightedCounts tally = new();
        CauseTable.Term good = coil.Terms[^1];
        for (int t = 0; t < faults.Length - 1; t++)
        {
            CauseTable.Term term = coil.Terms[t];
            tally.Add(term.Cause, faults[t].Weight, term, faults[t].Offset, term.Ohm.Mean);
        }

        for (int c = 0; c < spool.Length; c++)
        {
            bool wire = c is 1 or 2;
            tally.Add(
                SpoolPrior.Causes[c],
                spool[c].Weight,
                wire ? good with { Wire = new CauseTable.Spread(spool[c].Offset, 0.01) } : good,
                spool[c].Offset,
                spool[c].Offset
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
