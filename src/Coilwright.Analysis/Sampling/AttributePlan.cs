using Coilwright.Physics;
using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Sampling;

/// <summary>A plan that counts defective pieces: one sample, or several with a decision after each [Sampling].</summary>
/// <param name="Stages">The samples in order; the last one decides.</param>
public sealed record AttributePlan(IReadOnlyList<SampleStage> Stages)
{
    /// <summary>Pieces of the first sample.</summary>
    public int FirstSample => Stages[0].Size;

    /// <summary>A single sample.</summary>
    public static AttributePlan Single(int size, int accept) => new([new SampleStage(size, accept, accept + 1)]);

    /// <summary>Probability that a lot is accepted, exact for a stream of lots (binomial).</summary>
    /// <param name="defective">Part of pieces that are defective, 0…1.</param>
    public double AcceptProbability(double defective) => Walk(defective).Accept;

    /// <summary>Mean number of pieces looked at.</summary>
    /// <param name="defective">Part of pieces that are defective, 0…1.</param>
    public double MeanSample(double defective) => Walk(defective).Mean;

    /// <summary>The part defective at which a lot is accepted with a probability; between 0 and 1.</summary>
    /// <param name="probability">The probability, 0…1 without its ends.</param>
    public double DefectiveAt(double probability)
    {
        Require.InRange(probability, 1e-9, 1 - 1e-9);
        (double low, double high) = (0, 1);
        for (int step = 0; step < 80; step++)
        {
            double middle = (low + high) / 2;
            (low, high) = AcceptProbability(middle) > probability ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>The smallest single plan that accepts good lots and refuses bad ones; null when none of up to 5,000 pieces does.</summary>
    /// <param name="good">Part defective of a good lot.</param>
    /// <param name="acceptGood">Least probability of accepting it.</param>
    /// <param name="bad">Part defective of a bad lot, above <paramref name="good"/>.</param>
    /// <param name="acceptBad">Largest probability of accepting it.</param>
    public static AttributePlan? FindSingle(double good, double acceptGood, double bad, double acceptBad)
    {
        int accept = 0;
        for (int size = 1; size <= 5000; size++)
        {
            while (accept < size && Binomial.CDF(good, size, accept) < acceptGood)
            {
                accept++;
            }

            if (Binomial.CDF(bad, size, accept) <= acceptBad)
            {
                return Single(size, accept);
            }
        }

        return null;
    }

    /// <summary>Follows the number found from stage to stage.</summary>
    private (double Accept, double Mean) Walk(double defective)
    {
        Require.InRange(defective, 0, 1);
        Dictionary<int, double> going = new() { [0] = 1 };
        double accepted = 0,
            mean = 0;
        foreach (SampleStage stage in Stages)
        {
            mean += going.Values.Sum() * stage.Size;
            Dictionary<int, double> next = [];
            foreach ((int found, double chance) in going)
            {
                for (int more = 0; more <= Math.Min(stage.Size, stage.Reject - 1 - found); more++)
                {
                    double here = chance * Binomial.PMF(defective, stage.Size, more);
                    if (found + more <= stage.Accept)
                    {
                        accepted += here;
                    }
                    else
                    {
                        next[found + more] = next.GetValueOrDefault(found + more) + here;
                    }
                }
            }

            going = next;
        }

        return (accepted, mean);
    }
}
