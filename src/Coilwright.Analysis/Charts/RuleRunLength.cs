using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.Charts;

/// <summary>How many values pass on average before the Western Electric rules signal: by chance, or after a shift.</summary>
/// <remarks>
/// Exact Markov chain over what the rules remember (Champ and Woodall, Technometrics 29, 1987) [RunRules], for independent normal values
/// with known centre and sigma.
/// Limits taken from twenty coils alarm a little oftener or more seldom than that.
/// </remarks>
public static class RuleRunLength
{
    private const int Remembered = 4;

    /// <summary>Mean number of values to the first signal, that one included.</summary>
    /// <param name="shift">Shift of the mean in sigma; 0 gives the false alarms.</param>
    /// <param name="twoOfThree">With the rule of that name.</param>
    /// <param name="fourOfFive">With the rule of that name.</param>
    /// <param name="run">Run on one side that signals, 2…20; 0 without that rule.</param>
    /// <param name="beyondThree">With the rule of one point beyond 3 sigma; without any rule the answer is infinite.</param>
    public static double Compute(double shift = 0, bool twoOfThree = true, bool fourOfFive = true, int run = 8, bool beyondThree = true)
    {
        if (!(twoOfThree || fourOfFive || run > 0 || beyondThree))
        {
            return double.PositiveInfinity;
        }

        double[] chance =
        [
            .. Enumerable
                .Range(-3, 6)
                .Select(zone =>
                    Normal.CDF(0, 1, zone == 2 && !beyondThree ? double.PositiveInfinity : zone + 1 - shift)
                    - Normal.CDF(0, 1, zone == -3 && !beyondThree ? double.NegativeInfinity : zone - shift)
                ),
        ];
        Dictionary<State, int> places = new() { [new State(0, 0, 0)] = 0 };
        List<(int From, int To, double Chance)> steps = [];
        Queue<State> open = new([new State(0, 0, 0)]);
        while (open.TryDequeue(out State from))
        {
            for (int zone = -3; zone < 3; zone++)
            {
                if (from.Next(zone, twoOfThree, fourOfFive, run) is not { } to)
                {
                    continue;
                }

                if (places.TryAdd(to, places.Count))
                {
                    open.Enqueue(to);
                }

                steps.Add((places[from], places[to], chance[zone + 3]));
            }
        }

        return MeanRun([.. steps], places.Count);
    }

    /// <summary>
    /// Σ of the chance to be still without a signal. Once that chance falls by the same part at each value, the rest is a geometric series.
    /// </summary>
    private static double MeanRun((int From, int To, double Chance)[] steps, int states)
    {
        const int MostValues = 1_000_000,
            Settled = 64;
        double[] now = new double[states],
            next = new double[states];
        now[0] = 1;
        double mean = 1,
            left = 1,
            fall = 0;
        for (int value = 1; value < MostValues && left > 1e-16; value++)
        {
            Array.Clear(next);
            foreach ((int from, int to, double chance) in steps)
            {
                next[to] += now[from] * chance;
            }

            (now, next) = (next, now);
            double still = now.Sum(),
                part = still / left;
            mean += still;
            if (Math.Abs(part - fall) < 1e-14 && value > Settled && part < 1)
            {
                return mean + still * part / (1 - part);
            }

            (left, fall) = (still, part);
        }

        return mean;
    }

    /// <summary>
    /// What the rules remember: the side's level (0…2, signed) of the last points packed by threes, and the run on one side.
    /// </summary>
    /// <param name="Above">Bits: two for each of the last four points, beyond 1 sigma and beyond 2 sigma above.</param>
    /// <param name="Below">The same below.</param>
    /// <param name="Run">Signed length of the run.</param>
    private readonly record struct State(int Above, int Below, int Run)
    {
        /// <summary>The state after one more point; null when a rule signals.</summary>
        public State? Next(int zone, bool twoOfThree, bool fourOfFive, int run)
        {
            bool up = zone >= 0;
            int level = up ? zone : -zone - 1,
                bits = (level >= 1 ? 1 : 0) | (level >= 2 ? 2 : 0);
            int above = (Above << 2) | (up ? bits : 0),
                below = (Below << 2) | (up ? 0 : bits),
                side = up ? above : below;
            int length = up ? Math.Max(Run, 0) + 1 : Math.Min(Run, 0) - 1;
            bool signals =
                (twoOfThree && level >= 2 && Count(side >> 1, 3) >= 2)
                || (fourOfFive && level >= 1 && Count(side, 5) >= 4)
                || (run > 0 && Math.Abs(length) >= run);
            if (signals)
            {
                return null;
            }

            int mask = (1 << (2 * PointsKept(twoOfThree, fourOfFive))) - 1;
            return new State(above & mask, below & mask, run > 0 ? length : 0);
        }

        /// <summary>How many of the last points the rules still look at.</summary>
        private static int PointsKept(bool twoOfThree, bool fourOfFive) =>
            (twoOfThree, fourOfFive) switch
            {
                (_, true) => Remembered,
                (true, _) => 2,
                _ => 0,
            };

        private static int Count(int bits, int points) => Enumerable.Range(0, points).Count(n => ((bits >> (2 * n)) & 1) == 1);
    }
}
