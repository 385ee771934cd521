using System.Security.Cryptography;
using Coilwright.Analysis.Listening;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Listening;

/// <summary>A person wants to know whether a difference is heard: blind tests, kept in memory while they run.</summary>
/// <remarks>
/// Nothing of a test is stored. At most sixteen run at a time; the one longest not touched goes first, and each after two hours without a
/// touch.
/// </remarks>
public sealed class BlindTests
{
    /// <summary>Most tests at a time.</summary>
    public const int MostTests = 16;

    private static readonly TimeSpan s_life = TimeSpan.FromHours(2);

    private readonly TimeProvider _time;
    private readonly Func<bool> _draw;
    private readonly RecentlyUsed<Guid, Kept> _kept = new(MostTests);

    private sealed record Kept(BlindTest Test, DateTimeOffset TouchedUtc);

    /// <summary>Tests whose draws nobody can foretell.</summary>
    /// <param name="time">The clock.</param>
    public BlindTests(TimeProvider time)
        : this(time, () => RandomNumberGenerator.GetInt32(2) == 1) { }

    /// <summary>Tests with draws of one's own.</summary>
    /// <param name="time">The clock.</param>
    /// <param name="draw">Draws a round: true when X is B.</param>
    public BlindTests(TimeProvider time, Func<bool> draw) => (_time, _draw) = (time, draw);

    /// <summary>Begins a test, or says why it cannot be: "design1" or "rounds".</summary>
    /// <param name="heard">The two designs.</param>
    /// <param name="rounds">One of <see cref="BlindVerdict.Lengths"/>.</param>
    public ReadOutcome<BlindTest> Begin(HeardDesigns heard, int rounds)
    {
        List<Problem> problems = [];
        if (heard.Designs.Count != 2)
        {
            problems.Add(new Problem("design1", "a blind test is of two designs", $"{heard.Designs.Count} chosen", "two"));
        }
        else if (heard.Designs[0].Volts.SequenceEqual(heard.Designs[1].Volts))
        {
            problems.Add(
                new Problem("design1", "both sound alike to the last bit: there is nothing to tell apart", Allowed: "another design")
            );
        }
        else if (!heard.SameNotes)
        {
            problems.Add(
                new Problem(
                    "design1",
                    "the two play different notes, because their strings differ: the test would tell the strings apart, not the pickups",
                    Allowed: "a recipe with the same strings, or one string at a pitch that you name under Listen"
                )
            );
        }

        if (!BlindVerdict.Lengths.Contains(rounds))
        {
            problems.Add(new Problem("rounds", "how many rounds?", Allowed: string.Join(", ", BlindVerdict.Lengths)));
        }

        if (problems.Count > 0)
        {
            return new ReadOutcome<BlindTest>(null, problems);
        }

        BlindTest test = new(Guid.NewGuid(), heard, rounds, _draw);
        _kept.Keep(test.Id, new Kept(test, _time.GetUtcNow()));
        return new ReadOutcome<BlindTest>(test, []);
    }

    /// <summary>A test; null when it is not kept any more, or never was. To find it is to touch it.</summary>
    /// <param name="id">Its key.</param>
    public BlindTest? Find(Guid id)
    {
        DateTimeOffset now = _time.GetUtcNow();
        return _kept.Find(id) is { } kept && now - kept.TouchedUtc < s_life ? _kept.Keep(id, kept with { TouchedUtc = now }).Test : null;
    }
}
