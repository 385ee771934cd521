using System.Globalization;

namespace Coilwright.Shared;

/// <summary>
/// Properties held for many made-up inputs. A usual run makes the same inputs every time: the n-th input comes from <see cref="Seed"/> and
/// n, whatever the clock,
/// the machine or the order of tests. With <see cref="ExploreVariable"/> set to a number of seconds (<c>./test --explore SECONDS</c>) each
/// property runs that long on fresh inputs
/// as well, and a failure prints the seed of its smallest input; such a seed then goes into the call's <c>seeds</c>, so that it is tried
/// for ever.
/// </summary>
public static class Property
{
    /// <summary>Seconds of fresh inputs for each property, or unset.</summary>
    public const string ExploreVariable = "COILWRIGHT_EXPLORE_SECONDS";

    private const ulong Seed = 20261201;

    /// <summary>Inputs of a usual run where the call says nothing.</summary>
    private const int UsualCount = 100;

    public static void ForAll<T>(this Gen<T> gen, Func<T, bool> holds, int count = UsualCount, string[]? seeds = null) =>
        gen.ForAll(
            input =>
            {
                Assert.True(holds(input), "the property does not hold");
            },
            count,
            seeds
        );

    public static void ForAll<T>(this Gen<T> gen, Action<T> assert, int count = UsualCount, string[]? seeds = null)
    {
        foreach (string seed in seeds ?? [])
        {
            Try(gen.Generate(PCG.Parse(seed), null, out _), assert, "seed " + seed);
        }

        for (int n = 0; n < count; n++)
        {
            Try(Input(gen, n), assert, string.Create(CultureInfo.InvariantCulture, $"input {n} of {count}"));
        }

        if (
            int.TryParse(
                Environment.GetEnvironmentVariable(ExploreVariable),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out int seconds
            )
        )
        {
            gen.Sample(assert, time: seconds, threads: 1);
        }
    }

    public static void ForAll<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> holds, int count = UsualCount, string[]? seeds = null) =>
        gen.ForAll(input => holds(input.Item1, input.Item2), count, seeds);

    public static void ForAll<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> assert, int count = UsualCount, string[]? seeds = null) =>
        gen.ForAll(input => assert(input.Item1, input.Item2), count, seeds);

    public static void ForAll<T1, T2, T3>(
        this Gen<(T1, T2, T3)> gen,
        Func<T1, T2, T3, bool> holds,
        int count = UsualCount,
        string[]? seeds = null
    ) => gen.ForAll(input => holds(input.Item1, input.Item2, input.Item3), count, seeds);

    public static void ForAll<T1, T2, T3>(
        this Gen<(T1, T2, T3)> gen,
        Action<T1, T2, T3> assert,
        int count = UsualCount,
        string[]? seeds = null
    ) => gen.ForAll(input => assert(input.Item1, input.Item2, input.Item3), count, seeds);

    public static void ForAll<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> gen,
        Func<T1, T2, T3, T4, bool> holds,
        int count = UsualCount,
        string[]? seeds = null
    ) => gen.ForAll(input => holds(input.Item1, input.Item2, input.Item3, input.Item4), count, seeds);

    public static void ForAll<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> gen,
        Action<T1, T2, T3, T4> assert,
        int count = UsualCount,
        string[]? seeds = null
    ) => gen.ForAll(input => assert(input.Item1, input.Item2, input.Item3, input.Item4), count, seeds);

    public static void ForAll<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen,
        Func<T1, T2, T3, T4, T5, bool> holds,
        int count = UsualCount,
        string[]? seeds = null
    ) => gen.ForAll(input => holds(input.Item1, input.Item2, input.Item3, input.Item4, input.Item5), count, seeds);

    public static void ForAll<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen,
        Action<T1, T2, T3, T4, T5> assert,
        int count = UsualCount,
        string[]? seeds = null
    ) => gen.ForAll(input => assert(input.Item1, input.Item2, input.Item3, input.Item4, input.Item5), count, seeds);

    /// <summary>The n-th input of a usual run.</summary>
    internal static T Input<T>(Gen<T> gen, int n) => gen.Generate(new PCG((uint)n, Seed), null, out _);

    private static void Try<T>(T input, Action<T> assert, string which)
    {
        try
        {
            assert(input);
        }
        catch (Exception failure)
        {
            throw new Xunit.Sdk.XunitException($"{which}: {Check.Print(input)}: {failure.Message}", failure);
        }
    }
}
