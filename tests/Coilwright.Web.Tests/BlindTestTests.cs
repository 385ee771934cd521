using Coilwright.Analysis.Listening;
using Coilwright.Application.Listening;
using Coilwright.Formats.Listening;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Tests;

/// <summary>Blind tests as the program keeps them: listeners who guess, listeners who hear, and how much is kept.</summary>
public sealed class BlindTestTests
{
    [Fact]
    public void Of_100_listeners_who_guess_at_least_95_are_told_that_no_difference_was_shown()
    {
        Random drawn = new(20261202),
            guessed = new(7);
        BlindTests tests = new(TimeProvider.System, () => drawn.Next(2) == 1);
        BlindVerdict[] verdicts =
        [
            .. Enumerable
                .Range(0, 100)
                .Select(listener =>
                    Done(tests, BlindVerdict.Lengths[listener % BlindVerdict.Lengths.Count], (_, _) => guessed.Next(2) == 1)
                ),
        ];
        Assert.InRange(verdicts.Count(verdict => !verdict.IsHeard), 95, 100);
        Assert.True(verdicts.Select(verdict => verdict.Hits).Distinct().Count() > 5); // they do differ
    }

    [Fact]
    public void Whoever_hears_it_is_told_so_and_whoever_always_says_A_is_not()
    {
        Random drawn = new(3);
        BlindTests tests = new(TimeProvider.System, () => drawn.Next(2) == 1);
        BlindVerdict heard = Done(tests, 16, (test, round) => test.Unknown(round)!.SequenceEqual(test.Known(1)));
        Assert.Equal((16, true), (heard.Hits, heard.IsHeard));
        Assert.False(Done(tests, 20, (_, _) => false).IsHeard);
    }

    [Fact]
    public void An_answer_counts_once_and_nothing_is_told_before_the_last()
    {
        BlindTests tests = new(TimeProvider.System, () => true);
        BlindTest test = Begun(tests, 10);
        for (int round = 1; round <= 10; round++)
        {
            Assert.Null(test.Verdict);
            Assert.Null(test.Unknown(round - 1));
            Assert.Null(test.Unknown(round + 1));
            test.Answer(round, isSecond: true);
            test.Answer(round, isSecond: false); // sent again
        }

        Assert.Equal(new BlindVerdict(10, 10), test.Verdict);
        Assert.Null(test.Unknown(11));
        test.Answer(11, isSecond: false);
        Assert.Equal(new BlindVerdict(10, 10), test.Verdict);
    }

    [Fact]
    public void So_many_tests_are_kept_and_each_two_hours_from_its_last_touch()
    {
        PassingTime time = new();
        BlindTests tests = new(time, () => false);
        BlindTest[] begun = [.. Enumerable.Range(0, BlindTests.MostTests + 1).Select(_ => Begun(tests, 10))];
        Assert.Null(tests.Find(begun[0].Id));
        Assert.Same(begun[1], tests.Find(begun[1].Id));
        time.Now += TimeSpan.FromMinutes(119);
        Assert.Same(begun[1], tests.Find(begun[1].Id));
        time.Now += TimeSpan.FromMinutes(119);
        Assert.Same(begun[1], tests.Find(begun[1].Id));
        time.Now += TimeSpan.FromHours(2);
        Assert.Null(tests.Find(begun[1].Id));
    }

    [Fact]
    public void Another_number_of_rounds_and_two_that_are_alike_are_refused_together()
    {
        HeardDesign one = Design(0.5);
        HeardDesigns alike = new(Asked(), [one, one with { Name = "Another name" }]);
        ReadOutcome<BlindTest> begun = new BlindTests(TimeProvider.System, () => false).Begin(alike, 11);
        Assert.Equal(["design1", "rounds"], begun.Problems.Select(problem => problem.Field));
        Assert.Equal("10, 16, 20", begun.Problems[1].Allowed);
    }

    private static BlindVerdict Done(BlindTests tests, int rounds, Func<BlindTest, int, bool> saysSecond)
    {
        BlindTest test = Begun(tests, rounds);
        for (int round = 1; round <= rounds; round++)
        {
            test.Answer(round, saysSecond(test, round));
        }

        return test.Verdict!;
    }

    private static BlindTest Begun(BlindTests tests, int rounds) =>
        tests.Begin(new HeardDesigns(Asked(), [Design(0.5), Design(-0.25)]), rounds).Value!;

    private static ListenQuestion Asked() => new([], Playing.One, new PluckQuestion(null, null, null, null, null), Matched: true);

    private static HeardDesign Design(double volt) =>
        new("Heron neck A", "Player", Array.Empty<ListeningAnswer>(), [0, volt, 0.1], IsLevelKnown: true) { PeakV = 0.5, RmsV = 0.3 };

    private sealed class PassingTime : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 12, 2, 8, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
