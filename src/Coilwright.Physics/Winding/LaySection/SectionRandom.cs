namespace Coilwright.Physics.Winding;

/// <summary>The generator behind every seeded section: the same seed gives the same bits on every platform.</summary>
/// <remarks>
/// xoshiro256** with its state filled by SplitMix64, after D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators",
/// ACM Trans. Math. Softw. 47(4), 2021, https://prng.di.unimi.it. The normal variate is a sum of twelve uniforms (Irwin–Hall): mean 0 and
/// variance 1 exactly, tails end at ±6, and no library logarithm or cosine that could round differently elsewhere.
/// </remarks>
public sealed class SectionRandom
{
    private ulong _a;
    private ulong _b;
    private ulong _c;
    private ulong _d;

    /// <summary>Starts from a seed, which SplitMix64 spreads over the state.</summary>
    /// <param name="seed">Any number.</param>
    public SectionRandom(ulong seed)
    {
        _a = SplitMix(ref seed);
        _b = SplitMix(ref seed);
        _c = SplitMix(ref seed);
        _d = SplitMix(ref seed);
    }

    /// <summary>Starts from a full state; not all four may be zero.</summary>
    public SectionRandom(ulong a, ulong b, ulong c, ulong d)
    {
        _a = a;
        _b = b;
        _c = c;
        _d = d;
    }

    /// <summary>One step of SplitMix64.</summary>
    /// <param name="state">The state, moved on by the step.</param>
    public static ulong SplitMix(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15UL;
        ulong z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>The next 64 bits.</summary>
    public ulong NextBits()
    {
        ulong result = ulong.RotateLeft(_b * 5, 7) * 9;
        ulong shifted = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= shifted;
        _d = ulong.RotateLeft(_d, 45);
        return result;
    }

    /// <summary>Uniform in [0, 1), 53 bits.</summary>
    public double NextUniform() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Normal variate, mean 0 and standard deviation 1, within ±6.</summary>
    public double NextNormal()
    {
        double sum = -6;
        for (int i = 0; i < 12; i++)
        {
            sum += NextUniform();
        }

        return sum;
    }
}
