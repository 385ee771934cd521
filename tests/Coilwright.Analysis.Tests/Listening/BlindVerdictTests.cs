using System.Numerics;
using Coilwright.Analysis.Listening;

namespace Coilwright.Analysis.Tests.Listening;

/// <summary>What hits of a blind test say, against sums of whole numbers and against counting all answers.</summary>
public sealed class BlindVerdictTests
{
    [Fact]
    public void The_share_of_guessers_is_what_counting_all_1024_sets_of_answers_gives()
    {
        int[] sets = new int[11];
        for (int answers = 0; answers < 1 << 10; answers++)
        {
            sets[BitOperations.PopCount((uint)answers)]++;
        }

        Assert.Equal(1024, sets.Sum());
        for (int hits = 0; hits <= 10; hits++)
        {
            Assert.Equal(sets[hits..].Sum() / 1024.0, new BlindVerdict(hits, 10).GuessProbability, 15);
        }
    }

    [Theory] // sums of binomial coefficients over 2ⁿ, by hand: 11/1024, 56/1024; 2517/65536, 6885/65536; 21700/2²⁰, 60460/2²⁰
    [InlineData(9, 10, 11, 1 << 10, true)]
    [InlineData(8, 10, 56, 1 << 10, false)]
    [InlineData(12, 16, 2517, 1 << 16, true)]
    [InlineData(11, 16, 6885, 1 << 16, false)]
    [InlineData(15, 20, 21700, 1 << 20, true)]
    [InlineData(14, 20, 60460, 1 << 20, false)]
    public void Exact_sums_decide_at_five_per_cent(int hits, int rounds, int sets, int all, bool heard)
    {
        BlindVerdict verdict = new(hits, rounds);
        Assert.Equal((double)sets / all, verdict.GuessProbability, 15);
        Assert.Equal(heard, verdict.IsHeard);
    }

    [Theory]
    [InlineData(10, 9)]
    [InlineData(16, 12)]
    [InlineData(20, 15)]
    public void So_many_must_be_right(int rounds, int needed) => Assert.Equal(needed, BlindVerdict.Needed(rounds));

    [Fact]
    public void No_hit_or_more_is_certain_for_every_length_and_every_listener()
    {
        foreach (int rounds in BlindVerdict.Lengths)
        {
            Assert.Equal(1, new BlindVerdict(0, rounds).GuessProbability, 15);
            Assert.Equal(1, BlindVerdict.AtLeast(0, rounds, 0.75), 12);
            Assert.Equal(Math.Pow(0.5, rounds), new BlindVerdict(rounds, rounds).GuessProbability, 15);
        }
    }

    /// <summary>Against the sum with weights for each of the 2¹⁰ sets of answers, one by one.</summary>
    [Fact]
    public void Somebody_who_is_right_three_times_in_four_is_found_as_often_as_counting_says()
    {
        double found = 0;
        for (int answers = 0; answers < 1 << 10; answers++)
        {
            int hits = BitOperations.PopCount((uint)answers);
            found += hits >= 9 ? Math.Pow(0.75, hits) * Math.Pow(0.25, 10 - hits) : 0;
        }

        Assert.Equal(found, BlindVerdict.FindsThreeInFour(10), 12);
        Assert.InRange(BlindVerdict.FindsThreeInFour(10), 0.24, 0.25); // as the guide says
        Assert.InRange(BlindVerdict.FindsThreeInFour(16), 0.63, 0.64);
        Assert.InRange(BlindVerdict.FindsThreeInFour(20), 0.61, 0.62);
    }

    [Fact]
    public void A_test_of_two_rounds_can_show_nothing()
    {
        Assert.Equal(3, BlindVerdict.Needed(2)); // two right by guessing: one test in four
        Assert.Equal(0, BlindVerdict.FindsThreeInFour(2));
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindVerdict.AtLeast(1, 61, 0.5));
    }
}
