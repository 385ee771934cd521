using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Steps;

/// <summary>What may follow what, and when. Counts in UTC alone, so that no change of the wall clock shortens a hold.</summary>
public static class StepRules
{
    /// <summary>The hold that a finished step leaves behind; null when none.</summary>
    public static Hold? HoldAfter(StepPlan plan, DateTimeOffset endedUtc) =>
        plan.HoldAfter > TimeSpan.Zero ? new Hold(plan.HoldReason, endedUtc, endedUtc + plan.HoldAfter) : null;

    /// <summary>Every reason why a step may not begin now; empty when it may.</summary>
    /// <param name="step">Word for the step.</param>
    /// <param name="plans">The recipe's steps in order.</param>
    /// <param name="runs">What was done on the piece.</param>
    /// <param name="holds">Holds of its own, such as an inspection; the steps' own follow from the runs.</param>
    /// <param name="nowUtc">The shop's now.</param>
    /// <param name="zone">The shop's time zone, for the words.</param>
    public static IReadOnlyList<Problem> MayBegin(
        string step,
        IReadOnlyList<StepPlan> plans,
        IReadOnlyList<StepRun> runs,
        IReadOnlyList<Hold> holds,
        DateTimeOffset nowUtc,
        TimeZoneInfo zone
    )
    {
        int place = PlaceOf(plans, step);
        if (place < 0)
        {
            return [new Problem("step", "the recipe has no such step", step, string.Join(", ", plans.Select(plan => plan.Name)))];
        }

        List<Problem> problems = [];
        if (runs.Any(run => run.Step == step))
        {
            problems.Add(new Problem("step", "this step was begun already", step));
        }

        foreach (
            StepPlan before in plans.Take(place).Where(before => !runs.Any(run => run.Step == before.Name && run.EndedUtc is not null))
        )
        {
            problems.Add(new Problem("step", $"{before.Name} comes before {step} and is not done", step, before.Name + " first"));
        }

        problems.AddRange(
            Running(plans, runs, holds, nowUtc)
                .Select(hold => new Problem(
                    "step",
                    $"a hold runs: {hold.Words(zone)}",
                    ShopTime.Words(nowUtc, zone),
                    hold.UntilUtc is { } until ? "from " + ShopTime.Words(until, zone) : "after the hold was lifted with a reason"
                ))
        );
        return problems;
    }

    /// <summary>Why a step that goes on may not end now; null when it may.</summary>
    public static Problem? MayEnd(StepPlan plan, StepRun run, DateTimeOffset nowUtc, TimeZoneInfo zone)
    {
        DateTimeOffset earliest = run.BegunUtc + plan.Least;
        return nowUtc >= earliest
            ? null
            : new Problem(
                "step",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{plan.Name} takes at least {plan.Least.TotalMinutes:0.#} min; begun {ShopTime.Words(run.BegunUtc, zone)}"
                ),
                ShopTime.Words(nowUtc, zone),
                "from " + ShopTime.Words(earliest, zone)
            );
    }

    /// <summary>Where the piece stands. A hold that a person must lift comes before the clock of a step that goes on.</summary>
    public static StepStatus Stand(
        IReadOnlyList<StepPlan> plans,
        IReadOnlyList<StepRun> runs,
        IReadOnlyList<Hold> holds,
        DateTimeOffset nowUtc,
        TimeZoneInfo zone
    )
    {
        Hold? heldBy = holds.LastOrDefault(hold => hold.UntilUtc is null && hold.Runs(nowUtc));
        foreach (StepRun open in runs.Where(run => run.EndedUtc is null))
        {
            if (plans.FirstOrDefault(plan => plan.Name == open.Step) is { } plan)
            {
                StepStatus going = Going(plan, open, nowUtc, zone);
                return heldBy is null
                    ? going
                    : going with
                    {
                        State = StepState.Held,
                        Words = $"{heldBy.Words(zone)}; {going.Words}",
                        HeldBy = heldBy,
                    };
            }
        }

        StepPlan? next = plans.FirstOrDefault(plan => runs.All(run => run.Step != plan.Name));
        Hold? longest = heldBy ?? Running(plans, runs, holds, nowUtc).MaxBy(hold => hold.UntilUtc);
        if (longest is not null)
        {
            return new StepStatus(StepState.Held, next?.Name ?? "", longest.UntilUtc, longest.Words(zone)) { HeldBy = heldBy };
        }

        return next is null
            ? new StepStatus(StepState.Done, "", null, "every step is done")
            : new StepStatus(StepState.MayMove, next.Name, null, $"may go to {next.Name}");
    }

    /// <summary>The holds that run: those of finished steps, and the piece's own.</summary>
    public static IEnumerable<Hold> Running(
        IReadOnlyList<StepPlan> plans,
        IReadOnlyList<StepRun> runs,
        IReadOnlyList<Hold> holds,
        DateTimeOffset nowUtc
    ) =>
        runs.Where(run => run.EndedUtc is not null)
            .Select(run => plans.FirstOrDefault(plan => plan.Name == run.Step) is { } plan ? HoldAfter(plan, run.EndedUtc!.Value) : null)
            .OfType<Hold>()
            .Concat(holds)
            .Where(hold => hold.Runs(nowUtc));

    private static StepStatus Going(StepPlan plan, StepRun run, DateTimeOffset nowUtc, TimeZoneInfo zone)
    {
        DateTimeOffset earliest = run.BegunUtc + plan.Least;
        DateTimeOffset? latest = plan.Most is { } most ? run.BegunUtc + most : null;
        if (nowUtc < earliest)
        {
            return new StepStatus(StepState.Running, plan.Name, earliest, $"{plan.Name}, earliest out {ShopTime.Words(earliest, zone)}");
        }

        return latest is { } last && nowUtc > last
            ? new StepStatus(StepState.Late, plan.Name, null, $"{plan.Name}, was to end by {ShopTime.Words(last, zone)}")
            : new StepStatus(StepState.MayEnd, plan.Name, latest, $"{plan.Name} may end");
    }

    private static int PlaceOf(IReadOnlyList<StepPlan> plans, string step)
    {
        for (int at = 0; at < plans.Count; at++)
        {
            if (plans[at].Name == step)
            {
                return at;
            }
        }

        return -1;
    }
}
