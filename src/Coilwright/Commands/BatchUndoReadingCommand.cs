using System.CommandLine;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;

namespace Coilwright.Commands;

/// <summary>coilwright batch undo-reading BATCH: takes the entry or the correction made last of its coils back.</summary>
internal static class BatchUndoReadingCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        const string Does = "Takes the coil entered last back; a correction undone puts the reading before in force again";
        return ShopAction.Build(desk, "undo-reading", Does, [batch], async (open, parsed, person, cancel) =>
        {
            BatchStatus before = await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false);
            CoilEntryOutcome outcome = await open
                .Services.Winding.UndoLastAsync(before.Batch.Id, Guid.NewGuid(), person, cancel)
                .ConfigureAwait(false);
            string said = $"Undone: {before.UndoWords}; {Stands(outcome.Coil)}. Batch {before.Batch.Name}: {outcome.CountWords}";
            return (outcome.Problems, said);
        });
    }

    private static string Stands(CoilDossier? coil) =>
        coil is null ? "its tag is free again" : $"{coil.Tag} reads {string.Join(", ", coil.InForce.Select(reading => reading.Typed))}";
}
