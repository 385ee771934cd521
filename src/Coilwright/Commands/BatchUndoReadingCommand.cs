using System.CommandLine;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;

namespace Coilwright.Commands;

/// <summary>coilwright batch undo-reading BATCH: takes the entry or the correction made last of its coils back.</summary>
internal static class BatchUndoReadingCommand
{
    public static Command Build(Desk desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        return ShopAction.Build(desk, "undo-reading", "Takes the coil entered last back; a correction undone puts the reading before in force again", [batch], async (open, parsed, person, cancel) =>
        {
            BatchStanding before = await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false);
            CoilEntryOutcome outcome = await open.Services.Winding.UndoLastAsync(before.Batch.Id, Guid.NewGuid(), person, cancel).ConfigureAwait(false);
            string stands = outcome.Coil is { } coil ? $"{coil.Tag} reads {string.Join(", ", coil.InForce.Select(reading => reading.Typed))}" : "its tag is free again";
            return (outcome.Problems, $"Undone: {before.UndoWords}; {stands}. Batch {before.Batch.Name}: {outcome.CountWords}");
        });
    }
}
