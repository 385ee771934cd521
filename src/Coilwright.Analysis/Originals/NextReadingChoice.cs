using Coilwright.Physics;

namespace Coilwright.Analysis.Originals;

/// <summary>What each further reading is expected to tell about the wire.</summary>
/// <remarks>
/// Mutual information of the reading and the explanation, I = H(reading) − Σ p·H(reading | explanation), from histograms of the draws blurred with the
/// reading's own scatter (C. E. Shannon 1948, from memory).
/// </remarks>
internal static class NextReadingChoice
{
    private sealed record Possible(string Quantity, string Words, Func<PossibleWinding, double> Value, Func<double, double> Half);

    private static readonly Possible[] s_possible =
    [
        new("overallDiameter", "overall diameter at the finish lead with a micrometer, ±0.05 thou", winding => winding.OverallM, _ => 1.27e-6),
        new("bareDiameter", "bare diameter of an end with its enamel off, ±1 µm", winding => winding.BareM, _ => 1e-6),
        new("build", "thickness of the winding with a caliper, ±0.1 mm", winding => winding.BuildM, _ => 0.1e-3),
        new("turns", "turns counted while unwinding, ±0.2 %; only where it may be unwound", winding => winding.Turns, value => 0.002 * value),
        new("resistancePerLength", "resistance of a metre of the wire, ±1 %", winding => winding.OhmPerM, value => 0.01 * value),
        new("capacitance", "capacitance from the resonance with a known capacitor, ±10 %", winding => winding.CapacitanceF, value => 0.1 * value),
    ];

    public static IReadOnlyList<NextReading> Of(OriginalQuestion question, Posterior[] posteriors, double[][] weights)
    {
        List<NextReading> next = [];
        foreach (Possible possible in s_possible)
        {
            OriginalReading? taken = question.Readings.FirstOrDefault(reading => reading.Quantity == possible.Quantity);
            double middle = Mean(posteriors, weights, possible.Value);
            double half = possible.Half(middle);
            if (taken is not null && taken.Half <= 1.5 * half)
            {
                continue;
            }

            next.Add(new NextReading(possible.Quantity, possible.Words, Information(posteriors, weights, possible.Value, half / Estimate.Sigmas95)));
        }

        return [.. next.OrderByDescending(reading => reading.InformationBits)];
    }

    private static double Mean(Posterior[] posteriors, double[][] weights, Func<PossibleWinding, double> value) =>
        posteriors.Select((posterior, w) => posterior.Drawn.Select((winding, k) => weights[w][k] > 0 ? weights[w][k] * value(winding) : 0).Sum()).Sum();

    private static double Information(Posterior[] posteriors, double[][] weights, Func<PossibleWinding, double> value, double deviation)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        for (int w = 0; w < posteriors.Length; w++)
        {
            for (int k = 0; k < weights[w].Length; k++)
            {
                if (weights[w][k] > 1e-9)
                {
                    double at = value(posteriors[w].Drawn[k]);
                    (low, high) = (Math.Min(low, at), Math.Max(high, at));
                }
            }
        }

        double width = Math.Max(deviation / 2, (high - low) / 4000);
        int bins = (int)((high - low) / width) + 21;
        double[] whole = new double[bins];
        double conditional = 0;
        for (int w = 0; w < posteriors.Length; w++)
        {
            double[] counts = new double[bins];
            for (int k = 0; k < weights[w].Length; k++)
            {
                if (weights[w][k] > 1e-9)
                {
                    counts[(int)((value(posteriors[w].Drawn[k]) - low) / width) + 10] += weights[w][k];
                }
            }

            double part = counts.Sum();
            if (part > 1e-6)
            {
                double[] blurred = Blurred(counts, deviation / width);
                conditional += part * Entropy(blurred, part);
                for (int b = 0; b < bins; b++)
                {
                    whole[b] += blurred[b];
                }
            }
        }

        return Math.Max(0, Entropy(whole, whole.Sum()) - conditional);
    }

    private static double[] Blurred(double[] counts, double deviationBins)
    {
        double[] blurred = new double[counts.Length];
        int reach = Math.Min(10, (int)Math.Ceiling(4 * deviationBins));
        double[] kernel = [.. Enumerable.Range(-reach, 2 * reach + 1).Select(step => Math.Exp(-step * step / (2 * deviationBins * deviationBins)))];
        double sum = kernel.Sum();
        for (int b = 0; b < counts.Length; b++)
        {
            for (int step = -reach; step <= reach && counts[b] > 0; step++)
            {
                blurred[Math.Clamp(b + step, 0, counts.Length - 1)] += counts[b] * kernel[step + reach] / sum;
            }
        }

        return blurred;
    }

    private static double Entropy(double[] parts, double whole) => parts.Where(part => part > 0).Sum(part => -part / whole * Math.Log2(part / whole));
}
