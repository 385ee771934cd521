using Coilwright.Formats.Notes;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Notes;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Notes;

/// <summary>Where old notes go.</summary>
/// <param name="Batch">The batch; null for one that is begun.</param>
/// <param name="Name">Name of the batch.</param>
/// <param name="Revision">What a new one stands on; null for a batch that is there.</param>
/// <param name="CoilName">Which of the recipe's coils; null for the first.</param>
/// <param name="Person">Who brings them in.</param>
public sealed record NoteTarget(BatchRecord? Batch, string Name, RevisionRecord? Revision, string? CoilName, string Person);

/// <summary>Brings somebody's old notes of coils, kept in a spreadsheet, into a batch: all of them or none.</summary>
/// <param name="service">What the shop does with them.</param>
/// <param name="clock">The clock.</param>
public sealed class ImportNotes(NoteService service, TimeProvider clock)
{
    /// <summary>Reads the table, checks every line and, when nothing is wrong and it is wished, keeps all of it.</summary>
    /// <param name="table">The table, its headings understood without a problem.</param>
    /// <param name="target">Where to.</param>
    /// <param name="dryRun">True to check alone.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<NoteOutcome> RunAsync(NoteTable table, NoteTarget target, bool dryRun, CancellationToken cancel)
    {
        List<Problem> problems = [];
        IReadOnlyList<CoilNote> notes = table.Read(clock.LocalTimeZone, clock.GetUtcNow(), problems);
        BatchRecord batch = target.Batch ?? service.NewBatch(target.Name, target.Revision!, CoilOf(target), notes, target.Person);
        NoteOutcome outcome = await service
            .KeepAsync(batch, notes, target.Person, dryRun || problems.Count > 0, cancel)
            .ConfigureAwait(false);
        return outcome with { Problems = [.. problems, .. outcome.Problems] };
    }

    /// <summary>The coil that is named, or the recipe's first; a recipe that cannot be read is told by the batch's own rules.</summary>
    private static string CoilOf(NoteTarget target) =>
        target.CoilName ?? RecipeReader.Read(target.Revision!.Json).Value?.Coils[0].Name ?? "";
}
