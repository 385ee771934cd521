using MathNet.Numerics.LinearAlgebra;

namespace Coilwright.Analysis.Charts;

/// <summary>
/// Mean number of values to the first run of rising or falling, or of alternating, values when they come in no order at all. Holds for
/// every continuous distribution.
/// </summary>
/// <remarks>
/// With u the place of the last value in its distribution and k the points of the run so far, the wait W obeys
/// Wₖ(u) = 1 + ∫ᵤ¹ Wₖ₊₁ + ∫₀ᵘ W₂ (mirrored) for rising runs and the same with the two parts exchanged for alternating ones; solved on
/// midpoints.
/// Own derivation; held by simulation in the tests.
/// </remarks>
public static class StepRunLength
{
    private const int Cells = 40;

    /// <summary>To the first run of <paramref name="points"/> values that only rise or only fall.</summary>
    public static double Trending(int points) => Wait(points, alternating: false);

    /// <summary>To the first run of <paramref name="points"/> values that rise and fall in turn.</summary>
    public static double Alternating(int points) => Wait(points, alternating: true);

    private static double Wait(int points, bool alternating)
    {
        int runs = points - 2; // k = 2 … points − 1; the last step was up, a step down is the mirror image
        Matrix<double> system = Matrix<double>.Build.DenseIdentity(runs * Cells);
        for (int run = 0; run < runs; run++)
        {
            for (int last = 0; last < Cells; last++)
            {
                for (int next = 0; next < Cells; next++)
                {
                    double up = PartAbove(last, next) / Cells,
                        down = 1.0 / Cells - up;
                    double goesOn = alternating ? down : up,
                        ends = alternating ? up : down;
                    int mirrored = Cells - 1 - next;
                    if (run + 1 < runs)
                    {
                        system[run * Cells + last, (run + 1) * Cells + (alternating ? mirrored : next)] -= goesOn;
                    }

                    system[run * Cells + last, alternating ? next : mirrored] -= ends;
                }
            }
        }

        Vector<double> wait = system.Solve(Vector<double>.Build.Dense(runs * Cells, 1));
        double all = 0;
        for (int second = 0; second < Cells; second++)
        {
            // a second value u after a lower first one, or its mirror image
            all += wait[second] * (second + 0.5) * 2 / (Cells * (double)Cells);
        }

        return 2 + all;
    }

    /// <summary>How much of a cell lies above the middle of another.</summary>
    private static double PartAbove(int last, int next) =>
        Math.Sign(next - last) switch
        {
            1 => 1,
            0 => 0.5,
            _ => 0,
        };
}
