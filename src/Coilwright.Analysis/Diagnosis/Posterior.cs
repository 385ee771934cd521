namespace Coilwright.Analysis.Diagnosis;

/// <summary>Brings a spool's offset and a coil's causes together.</summary>
internal static class Posterior
{
    /// <summary>The causes of one coil.</summary>
    /// <param name="evidence">Its readings.</param>
    /// <param name="coil">The same, weighed.</param>
    /// <param name="shared">Log likelihood of the spool's coils at each offset of the grid.</param>
    /// <param name="isAmong">True when this coil is one of those; it is taken out, for it must not vouch for itself.</param>
    public static CoilDiagnosis Of(CoilEvidence evidence, WeighedCoil coil, double[] shared, bool isAmong)
    {
        double[] others = [.. shared.Select((log, g) => isAmong ? log - Math.Log(coil.Likelihood[g]) : log)];
        others = [.. others.Select(log => double.IsFinite(log) ? log : double.NegativeInfinity)];
        double largest = others.Max();
        if (double.IsNegativeInfinity(largest))
        {
            (others, largest) = (new double[others.Length], 0);
        }

        Tally tally = new();
        for (int g = 0; g < SpoolPrior.Grid.Length; g++)
        {
            double light = Math.Exp(others[g] - largest);
            if (light > 1e-12)
            {
                Add(tally, coil, SpoolPrior.Grid[g], light, SpoolPrior.At(SpoolPrior.Grid[g], evidence));
            }
        }

        return new CoilDiagnosis(tally.Causes(evidence), NextReadings.Of(evidence, tally));
    }

    /// <summary>A coil with no fault of its own has what its spool has.</summary>
    private static void Add(Tally tally, WeighedCoil coil, double offset, double light, double[] priors)
    {
        double[] weights = coil.At(offset);
        double prior = priors.Sum() * light;
        for (int t = 0; t < weights.Length; t++)
        {
            CauseTable.Term term = coil.Terms[t];
            if (term.Cause != "none")
            {
                tally.Add(term.Cause, prior * weights[t], term, offset, term.Ohm.Mean);
                continue;
            }

            for (int c = 0; c < priors.Length; c++)
            {
                bool wire = c is 1 or 2;
                tally.Add(SpoolPrior.Causes[c], priors[c] * light * weights[t], wire ? term with { Wire = new CauseTable.Spread(offset, 0.006) } : term, offset, offset);
            }
        }
    }
}
