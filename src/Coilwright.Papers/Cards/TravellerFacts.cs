using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Cards;

/// <summary>What a traveller says of the piece it goes with. Nothing given is a blank traveller, to be filled by hand.</summary>
public sealed record TravellerFacts
{
    /// <summary>Serial or tag; empty for a line to fill.</summary>
    public string Piece { get; init; } = "";

    /// <summary>Batch; empty for a line to fill.</summary>
    public string Batch { get; init; } = "";

    /// <summary>The shop's own steps with shortest and longest times and holds; empty for those usual for the recipe.</summary>
    public IReadOnlyList<StepPlan> Steps { get; init; } = [];

    /// <summary>Steps begun or done already.</summary>
    public IReadOnlyList<StepRun> Runs { get; init; } = [];

    /// <summary>The piece's own holds, beside those that steps leave behind.</summary>
    public IReadOnlyList<Hold> Holds { get; init; } = [];

    /// <summary>How the magnets are charged, in words; empty for lines to fill.</summary>
    public string Charge { get; init; } = "";

    /// <summary>The shop's now, for what runs; null leaves out where the piece stands.</summary>
    public DateTimeOffset? NowUtc { get; init; }

    /// <summary>The shop's time zone.</summary>
    public TimeZoneInfo Zone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>Every problem; none when a traveller can be made of it.</summary>
    /// <param name="plans">The steps it will print.</param>
    public IReadOnlyList<Problem> Check(IReadOnlyList<StepPlan> plans)
    {
        string known = string.Join(", ", plans.Select(plan => plan.Name));
        List<Problem> problems =
        [
            .. plans
                .GroupBy(plan => plan.Name)
                .Where(group => group.Count() > 1)
                .Select(group => new Problem("steps", "two steps bear this name", group.Key, "a name for each step")),
        ];
        problems.AddRange(
            plans
                .Where(plan => plan.Most < plan.Least)
                .Select(plan => new Problem(
                    "steps",
                    "the longest time is shorter than the shortest",
                    plan.Name,
                    "a longest time of at least the shortest"
                ))
        );
        problems.AddRange(
            Runs.Where(run => plans.All(plan => plan.Name != run.Step))
                .Select(run => new Problem("runs", "there is no such step", run.Step, known))
        );
        problems.AddRange(
            Runs.Where(run => run.EndedUtc < run.BegunUtc)
                .Select(run => new Problem("runs", "ended before it began", run.Step, "an end after the beginning"))
        );
        return problems;
    }
}
