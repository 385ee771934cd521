using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Batches;

/// <summary>A batch while it is wound.</summary>
/// <param name="Status">Its coils and verdicts.</param>
/// <param name="History">Its events as they hold.</param>
/// <param name="Plan">What a coil takes.</param>
/// <param name="NextToBegin">Tag to put on a spindle next: neither read nor on another spindle; null when none is left.</param>
public sealed record BatchProgress(BatchStatus Status, BatchEventLog History, CoilPlan Plan, string? NextToBegin)
{
    /// <summary>Real turns of a coil: the recipe's, or those chosen with the spool.</summary>
    public double WantedTurns => History.WantedTurns ?? Plan.SetUp.Turns;

    /// <summary>The first coil read; null before it.</summary>
    public CoilDossier? FirstPiece => Status.Coils.Count == 0 ? null : Status.Coils[0];

    /// <summary>
    /// Signals of the run's chart that nobody has looked into: those of coils behind the one answered last. A coil on hold waits for its
    /// own decision and is none of them.
    /// </summary>
    public IReadOnlyList<(string Tag, string Rule)> OpenSignals
    {
        get
        {
            List<string> tags = [.. Status.Coils.Select(coil => coil.Tag)];
            int answered = History.InForce.OfType<SignalAnswered>().Select(one => tags.IndexOf(one.Tag)).DefaultIfEmpty(-1).Max();
            return
            [
                .. BatchChart
                    .Signals(Status.Coils.Select(coil => (coil.Tag, coil.Verdict)))
                    .Where(signal => tags.IndexOf(signal.Tag) is var place && place > answered && IsPassed(place)),
            ];
        }
    }

    private bool IsPassed(int place) => Status.Coils[place].Verdict.Kind == VerdictKind.Pass;

    /// <summary>Coils still to be wound or read.</summary>
    public int CoilsLeft => Math.Max(0, Status.Wanted - (Status.Coils.Count - Status.Beyond.Count));
}

/// <summary>What a person says happened at a winder, as typed.</summary>
public sealed record BatchEventEntry
{
    /// <summary>Made by the client; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }
    public required BatchEventKind Kind { get; init; }

    /// <summary>Empty takes the only coil it can mean.</summary>
    public string Tag { get; init; } = "";

    /// <summary>What the counter shows, or how many coils more are wanted.</summary>
    public string Counter { get; init; } = "";

    /// <summary>The same as a number; null where it is none.</summary>
    internal double? CounterSaid =>
        QuantityParser.TryParse(Counter, QuantityKind.Turns, unitRequired: false, out Entered counter, out _) ? counter.Si : null;
    public string Spool { get; init; } = "";

    /// <summary>What was chosen: with a spool what stays the same, for a coil the cause that it really had.</summary>
    public string Choice { get; init; } = "";

    /// <summary>Turns to wind, for a spool on which ohms are held.</summary>
    public string Turns { get; init; } = "";
    public string Machine { get; init; } = "";
    public string Person { get; init; } = "";
    public string Note { get; init; } = "";
}

/// <summary>
/// The run of a batch at the winders: begin, pause, break and what is done about it, release after the first piece, and undo. Every event
/// is appended.
/// </summary>
public sealed class BatchEventService(IShopRecords records, WindingService winding, MachineService machines, TimeProvider clock)
{
    /// <summary>The batch as it stands; null when there is none.</summary>
    public async Task<BatchProgress?> StatusAsync(Guid batchId, CancellationToken cancel) =>
        await StatusAsync(batchId, await KnownPartsAsync(cancel).ConfigureAwait(false), cancel).ConfigureAwait(false);

    private Task<KnownParts> KnownPartsAsync(CancellationToken cancel) => KnownParts.ReadAsync(records.Recipes, records.Rules, cancel);

    /// <summary>What the shop knows of the batch's parts, with the set that held as it began, on the spool that is on now.</summary>
    private async Task<KnownParts> PartsOfAsync(KnownParts plain, BatchRecord batch, string spool, CancellationToken cancel)
    {
        IReadOnlyList<LearningRecord> learnt = await records.Learning.AllAsync(cancel).ConfigureAwait(false);
        return learnt.Any(record => record.Act == LearningAct.Accepted && record.TimeUtc <= batch.BegunUtc)
            ? plain.With(
                new LearningBook(learnt).For(batch.BegunUtc, await LearntParts.SpoolAsync(records, spool, cancel).ConfigureAwait(false))
            )
            : plain;
    }

    private async Task<BatchProgress?> StatusAsync(Guid batchId, KnownParts parts, CancellationToken cancel)
    {
        if (await winding.StatusAsync(batchId, cancel).ConfigureAwait(false) is not { } standing)
        {
            return null;
        }

        BatchRecord batch = standing.Batch;
        RevisionRecord revision = await records
            .Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel)
            .ConfigureAwait(false)
            ?? throw new InvalidOperationException($"Batch {batch.Id} stands on a revision that is not there.");
        IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(batchId, cancel).ConfigureAwait(false);
        BatchEventLog history = new(
            batch,
            events,
            standing.Coils.ToDictionary(coil => coil.Tag, coil => coil.LastUtc, StringComparer.Ordinal)
        );
        HashSet<string> taken = [.. standing.Coils.Select(coil => coil.Tag), .. history.OnSpindles.Select(coil => coil.Tag)];
        string? next = Enumerable
            .Range(1, standing.Wanted)
            .Select(number => BatchTags.Of(batch, number))
            .FirstOrDefault(tag => !taken.Contains(tag));
        return new BatchProgress(
            standing,
            history,
            CoilPlan.Of(revision, batch.CoilName, await PartsOfAsync(parts, batch, history.Spool, cancel).ConfigureAwait(false)),
            standing.State == BatchState.UnderWay ? next : null
        );
    }

    /// <summary>Some batches as they stand, or why they cannot be shown.</summary>
    public async Task<IReadOnlyList<RecordStatus<BatchProgress>>> StatusesAsync(IEnumerable<BatchRecord> batches, CancellationToken cancel)
    {
        KnownParts parts = await KnownPartsAsync(cancel).ConfigureAwait(false);
        List<RecordStatus<BatchProgress>> standings = [];
        foreach (BatchRecord batch in batches)
        {
            standings.Add(
                await RecordStatus
                    .ReadAsync(
                        "Batch " + batch.Name,
                        async () =>
                            await StatusAsync(batch.Id, parts, cancel).ConfigureAwait(false)
                            ?? throw new InvalidOperationException("a batch that was listed is gone"),
                        batch.Id
                    )
                    .ConfigureAwait(false)
            );
        }

        return standings;
    }

    /// <summary>Records what happened, or gives every problem and records nothing.</summary>
    public async Task<IReadOnlyList<Problem>> RecordEventAsync(BatchEventEntry said, CancellationToken cancel)
    {
        if (await StatusAsync(said.BatchId, cancel).ConfigureAwait(false) is not { } run)
        {
            return [new Problem("batch", "there is no such batch")];
        }

        IReadOnlyList<BatchEvent> before = await records.Batches.EventsAsync(said.BatchId, cancel).ConfigureAwait(false);
        if (before.FirstOrDefault(one => one.Id == said.Id) is { } there)
        {
            return SaysTheSame(there, said, run.Status.Batch) ? [] : [SentAgain.Event]; // sent twice
        }

        string machineName = said.Machine.Trim().Length > 0 ? said.Machine.Trim() : MachineOf(run, said.Tag);
        Machine? machine = await machines.FindAsync(machineName, cancel).ConfigureAwait(false);
        BatchEventReader reader = new(
            said,
            run,
            machine,
            machine?.Name ?? machineName,
            await KnownNames.ReadAsync(records, cancel).ConfigureAwait(false)
        );
        BatchEvent? happened = reader.Read(clock.GetUtcNow());
        if (happened is null)
        {
            return reader.Problems;
        }

        await records.Batches.AddEventAsync(happened, cancel).ConfigureAwait(false);
        return [];
    }

    /// <summary>Takes the last event back. The coil then stands as before it.</summary>
    public async Task<IReadOnlyList<Problem>> UndoLastAsync(Guid batchId, Guid undoId, string person, CancellationToken cancel)
    {
        IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(batchId, cancel).ConfigureAwait(false);
        if (events.FirstOrDefault(one => one.Id == undoId) is { } there)
        {
            return there is Undone ? [] : [SentAgain.Event];
        }

        if (BatchEventLog.Holding(events) is not [.., var last])
        {
            return [new Problem("batch", "there is nothing to undo")];
        }

        await TakeBackAsync(last, undoId, person, cancel).ConfigureAwait(false);
        return [];
    }

    /// <summary>Takes the closing of a batch back, whatever was said since: its next coil is asked for again.</summary>
    public async Task<IReadOnlyList<Problem>> ReopenAsync(Guid batchId, Guid undoId, string person, CancellationToken cancel)
    {
        IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(batchId, cancel).ConfigureAwait(false);
        if (events.FirstOrDefault(one => one.Id == undoId) is { } there)
        {
            return there is Undone ? [] : [SentAgain.Event];
        }

        if (BatchEventLog.ClosingOf(BatchEventLog.Holding(events)) is not { } closing)
        {
            return [new Problem("batch", "it was not closed")];
        }

        await TakeBackAsync(closing, undoId, person, cancel).ConfigureAwait(false);
        return [];
    }

    private async Task TakeBackAsync(BatchEvent one, Guid undoId, string person, CancellationToken cancel) =>
        await records
            .Batches.AddEventAsync(
                new Undone
                {
                    Id = undoId,
                    BatchId = one.BatchId,
                    Tag = one.Tag,
                    Person = person.Trim(),
                    TimeUtc = clock.GetUtcNow(),
                    Undoes = one.Id,
                },
                cancel
            )
            .ConfigureAwait(false);

    /// <summary>True when an event was made of these words. What was left out was filled in from how things stood then.</summary>
    private static bool SaysTheSame(BatchEvent there, BatchEventEntry said, BatchRecord batch) =>
        there.Kind == said.Kind.ToString()
        && (said.Tag.Trim().Length == 0 || there.Tag == BatchTags.Tidy(batch, said.Tag))
        && there.IsSaidBy(said);

    private static string MachineOf(BatchProgress run, string tag)
    {
        CoilOnSpindle? coil = run.History.OnSpindles.FirstOrDefault(one =>
            string.Equals(one.Tag, tag.Trim(), StringComparison.OrdinalIgnoreCase)
        ) ?? (run.History.OnSpindles.Count == 1 && tag.Length == 0 ? run.History.OnSpindles[0] : null);
        return coil?.Machine ?? run.Status.Batch.Machine;
    }
}
