using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Steps;

/// <summary>Steps on pieces: begun, ended, refused while a hold runs. Several pieces go together or none of them does.</summary>
public sealed class StepService(IShopRecords records, PieceService shelf)
{
    /// <summary>Begins a step on pieces, or gives every problem. A step without a shortest time is done at once.</summary>
    /// <param name="id">Client-made id.</param>
    /// <param name="step">Word for the step.</param>
    /// <param name="serials">Pieces.</param>
    /// <param name="mix">Label of the ink, for marking; empty elsewhere.</param>
    /// <param name="person">Who does it.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="charge">What magnets are charged to, for their step where it is done at once; nothing elsewhere.</param>
    /// <param name="told">The tablet's times when the entry waited on it: whether the step may begin follows from when it was made.</param>
    public async Task<IReadOnlyList<Problem>> BeginAsync(
        Guid id,
        string step,
        IReadOnlyList<string> serials,
        string mix,
        string person,
        CancellationToken cancel,
        ChargeEntry? charge = null,
        LateEntry? told = null
    )
    {
        List<Problem> problems = [];
        (DateTimeOffset nowUtc, ShopRules rules) = await NowAsync(cancel).ConfigureAwait(false);
        IReadOnlyList<PieceSnapshot> lives = await shelf.FindAllAsync(serials, problems, cancel).ConfigureAwait(false);
        RefuseRecorded(step, problems);
        DateTimeOffset madeUtc = LateEntry.MadeUtc(told, nowUtc);
        InkMixRecord? ink = await InkAsync(step, mix, madeUtc, rules, problems, cancel).ConfigureAwait(false);
        StepCharge charged = StepCharge.Read(charge, step, lives, rules, problems);
        List<PieceEvent> events = [];
        foreach (PieceSnapshot life in lives)
        {
            problems.AddRange(MayBegin(life, step, madeUtc, rules));
            events.Add(
                new StepBegun
                {
                    Id = ReadingChain.IdWithin(id, life.Piece.Serial + " begun"),
                    PieceId = life.Piece.Id,
                    Step = step,
                    MixId = ink?.Id,
                    Person = person.Trim(),
                    TimeUtc = nowUtc,
                }
            );
            if (life.Plans.FirstOrDefault(plan => plan.Name == step) is { } plan && plan.Least == TimeSpan.Zero)
            {
                events.Add(Ended(id, step, life, charged.End(plan, life), person, nowUtc));
            }
            else
            {
                charged.RefuseBeforeEnd(life);
            }
        }

        return await KeepAsync(id, events, problems, cancel, told).ConfigureAwait(false);
    }

    /// <summary>
    /// Ends a step that goes on, or gives every problem; a step that charges magnets takes what they were charged to. An end told late
    /// counts for the step's
    /// shortest time from when it was made.
    /// </summary>
    public async Task<IReadOnlyList<Problem>> EndAsync(
        Guid id,
        string step,
        IReadOnlyList<string> serials,
        string person,
        CancellationToken cancel,
        ChargeEntry? charge = null,
        LateEntry? told = null
    )
    {
        List<Problem> problems = [];
        (DateTimeOffset nowUtc, ShopRules rules) = await NowAsync(cancel).ConfigureAwait(false);
        List<PieceEvent> events = [];
        IReadOnlyList<PieceSnapshot> lives = await shelf.FindAllAsync(serials, problems, cancel).ConfigureAwait(false);
        StepCharge charged = StepCharge.Read(charge, step, lives, rules, problems);
        foreach (PieceSnapshot life in lives)
        {
            if (Open(life, step) is not { } run)
            {
                problems.Add(
                    new Problem(
                        "step",
                        $"{step} does not go on with {life.Piece.Serial}",
                        step,
                        string.Join(", ", life.History.Runs.Where(one => one.EndedUtc is null).Select(one => one.Step))
                            is { Length: > 0 } going
                            ? going
                            : "begin it first"
                    )
                );
            }
            else if (
                life.Plans.FirstOrDefault(plan => plan.Name == step) is { } plan
                && StepRules.MayEnd(plan, run, LateEntry.MadeUtc(told, nowUtc), rules.Zone) is { } early
            )
            {
                problems.Add(early);
            }

            ChargeAsSaid? said = charged.End(life.Plans.FirstOrDefault(one => one.Name == step), life);
            events.Add(Ended(id, step, life, said, person, nowUtc));
        }

        return await KeepAsync(id, events, problems, cancel, told).ConfigureAwait(false);
    }

    /// <summary>Puts a hold on pieces until a person lifts it.</summary>
    public Task<IReadOnlyList<Problem>> HoldAsync(
        Guid id,
        IReadOnlyList<string> serials,
        string reason,
        string person,
        CancellationToken cancel
    ) =>
        WithReasonAsync(
            id,
            serials,
            reason,
            (life, nowUtc) =>
                [
                    new Held
                    {
                        Id = ReadingChain.IdWithin(id, life.Piece.Serial),
                        PieceId = life.Piece.Id,
                        Reason = reason.Trim(),
                        Person = person.Trim(),
                        TimeUtc = nowUtc,
                    },
                ],
            cancel
        );

    /// <summary>
    /// Lifts every hold that persons or alarms put on pieces, with a reason. Holds of steps end by themselves and cannot be lifted.
    /// </summary>
    public Task<IReadOnlyList<Problem>> LiftAsync(
        Guid id,
        IReadOnlyList<string> serials,
        string reason,
        string person,
        CancellationToken cancel
    ) =>
        WithReasonAsync(
            id,
            serials,
            reason,
            (life, nowUtc) =>
                [
                    .. RunningHolds(life)
                        .Select(held => new Lifted
                        {
                            Id = ReadingChain.IdWithin(id, held.Id.ToString()),
                            PieceId = life.Piece.Id,
                            HoldId = held.Id,
                            Reason = reason.Trim(),
                            Person = person.Trim(),
                            TimeUtc = nowUtc,
                        }),
                ],
            cancel
        );

    /// <summary>Every reason why a step may not begin on a piece now; empty when it may.</summary>
    internal static IEnumerable<Problem> MayBegin(PieceSnapshot life, string step, DateTimeOffset nowUtc, ShopRules rules)
    {
        if (life.NotHere is { } away)
        {
            return [away];
        }

        return StepRules
            .MayBegin(step, life.Plans, life.History.Runs, life.History.Holds, nowUtc, rules.Zone)
            .Select(problem => problem with { Message = $"{life.Piece.Serial}: {problem.Message}" });
    }

    private static StepRun? Open(PieceSnapshot life, string step) =>
        life.History.Runs.FirstOrDefault(run => run.Step == step && run.EndedUtc is null);

    private static StepEnded Ended(Guid id, string step, PieceSnapshot life, ChargeAsSaid? charge, string person, DateTimeOffset nowUtc) =>
        new()
        {
            Id = ReadingChain.IdWithin(id, life.Piece.Serial + " ended"),
            PieceId = life.Piece.Id,
            Step = step,
            Charge = charge,
            Person = person.Trim(),
            TimeUtc = nowUtc,
        };

    private static IEnumerable<Held> RunningHolds(PieceSnapshot life) =>
        life.History.InForce.OfType<Held>().Where(one => life.History.InForce.OfType<Lifted>().All(lift => lift.HoldId != one.Id));

    private static void RefuseRecorded(string step, List<Problem> problems)
    {
        (string Step, string Where)[] elsewhere =
        [
            (PieceEventLog.Assembly, "putting the piece together is this step"),
            (PieceEventLog.FinalTest, "enter its readings at the final test"),
            (PieceEventLog.Packing, "ship the piece"),
            ("potting", "put the pieces into a basket"),
        ];
        if (Array.Find(elsewhere, one => one.Step == step) is { Step: { Length: > 0 } } known)
        {
            problems.Add(new Problem("step", "this step is recorded elsewhere", step, known.Where));
        }
    }

    private async Task<(DateTimeOffset NowUtc, ShopRules Rules)> NowAsync(CancellationToken cancel) =>
        (await shelf.NowUtcAsync(cancel).ConfigureAwait(false), await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false));

    private async Task<InkMixRecord?> InkAsync(
        string step,
        string label,
        DateTimeOffset nowUtc,
        ShopRules rules,
        List<Problem> problems,
        CancellationToken cancel
    )
    {
        if (step != "marking")
        {
            if (label.Trim().Length > 0)
            {
                problems.Add(new Problem("mix", $"no ink belongs to {step}", label, "leave it empty"));
            }

            return null;
        }

        IReadOnlyList<InkMixRecord> newest = await records.Steps.InkMixesAsync(20, cancel).ConfigureAwait(false);
        InkMixRecord? ink = newest.FirstOrDefault(mix => string.Equals(mix.Label, label.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? (
                label.Trim().Length > 0
                && await records.Steps.FindInkMixesAsync(label.Trim(), cancel).ConfigureAwait(false) is [var named, ..]
                    ? named
                    : null
            );
        if (ink is not null && (await records.Steps.StepUndosAsync([ink.Id], cancel).ConfigureAwait(false)).Count > 0)
        {
            ink = null; // a mix that was taken back is none
        }

        if (ink is null)
        {
            problems.Add(
                new Problem(
                    "mix",
                    label.Trim().Length == 0 ? "which ink is it marked with?" : "there is no such mix",
                    label.Trim().Length == 0 ? null : label,
                    newest.Count > 0 ? string.Join(", ", newest.Select(mix => mix.Label).Take(5)) : "record the mix first"
                )
            );
        }
        else if (ink.ToMix().MayPrint(nowUtc, rules.Zone) is { } refused)
        {
            problems.Add(refused);
        }

        return ink;
    }

    private async Task<IReadOnlyList<Problem>> WithReasonAsync(
        Guid id,
        IReadOnlyList<string> serials,
        string reason,
        Func<PieceSnapshot, DateTimeOffset, IReadOnlyList<PieceEvent>> make,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        if (reason.Trim().Length is 0 or > 1000)
        {
            problems.Add(new Problem("reason", "a hold is put on and lifted with a reason", null, "a few words"));
        }

        List<PieceEvent> events = [];
        foreach (PieceSnapshot life in await shelf.FindAllAsync(serials, problems, cancel).ConfigureAwait(false))
        {
            events.AddRange(make(life, nowUtc));
        }

        if (problems.Count == 0 && events.Count == 0)
        {
            problems.Add(new Problem("pieces", "no hold that a person lifts runs on them", string.Join(", ", serials)));
        }

        return await KeepAsync(id, events, problems, cancel).ConfigureAwait(false);
    }

    private async Task<IReadOnlyList<Problem>> KeepAsync(
        Guid id,
        List<PieceEvent> events,
        List<Problem> problems,
        CancellationToken cancel,
        LateEntry? told = null
    )
    {
        if (problems.Count == 0)
        {
            await records.Pieces.AddEventsAsync([.. events, .. ToldLate.Of(events, told)], [], cancel).ConfigureAwait(false);
            return problems;
        }

        // The same entry sent twice finds its own step begun already: that is no problem.
        IReadOnlyList<PieceEvent> kept = await records
            .Pieces.EventsAsync([.. events.Select(one => one.PieceId)], cancel)
            .ConfigureAwait(false);
        return events.Count > 0 && events.All(one => kept.Any(there => there.Id == one.Id)) ? [] : problems;
    }
}
