using Coilwright.Physics;

namespace Coilwright.Analysis.Pairing;

/// <summary>What hum is left of two coils wound to cancel it.</summary>
public static class HumResidue
{
    /// <summary>Lowest level told; two equal counts would give no hum at all, which no pair of coils does.</summary>
    public const double LowestDb = -120;

    /// <summary>Level of the remaining hum against that of the same two coils adding, dB.</summary>
    /// <param name="first">Turns of the first coil, above 0 (or turns × area, where the coils differ in size).</param>
    /// <param name="second">Turns of the second coil, above 0.</param>
    /// <remarks>
    /// 20·log₁₀(|N₁ − N₂|/(N₁ + N₂)): a uniform field induces the same voltage in every turn of equal area [derived]. Not below −120 dB.
    /// </remarks>
    public static double LevelDb(double first, double second)
    {
        Require.InRange(first, double.Epsilon, 1e9);
        Require.InRange(second, double.Epsilon, 1e9);
        double part = Math.Abs(first - second) / (first + second);
        return Math.Max(LowestDb, 20 * Math.Log10(Math.Max(part, 1e-12)));
    }

    /// <summary>The same with its interval: each count is taken to be within ± <paramref name="counterPart"/> of itself.</summary>
    /// <param name="first">Turns of the first coil.</param>
    /// <param name="second">Turns of the second coil.</param>
    /// <param name="counterPart">Doubt of a turns counter, a part of one; ±0.2 % is common practice, no source.</param>
    public static Estimate Level(double first, double second, double counterPart = 0.002)
    {
        double doubt = counterPart * Math.Sqrt(first * first + second * second),
            sum = first + second,
            apart = Math.Abs(first - second);
        double AtDifference(double turns) => LevelDb((sum + turns) / 2, Math.Max(1e-9, (sum - turns) / 2));
        return new Estimate(LevelDb(first, second), AtDifference(Math.Max(0, apart - doubt)), AtDifference(apart + doubt), Basis.Forecast);
    }
}
