using Coilwright.Workshop.Batches.Events;

namespace Coilwright.Workshop.Batches;

/// <summary>Which event a person means who names its kind.</summary>
internal static class BatchEventMaker
{
    /// <summary>The event of an entry, without what follows from how the batch stands.</summary>
    /// <param name="said">What a person says happened.</param>
    /// <param name="spool">Label of the spool as the shop has it.</param>
    /// <param name="nowUtc">The shop's now.</param>
    public static BatchEvent Of(BatchEventEntry said, string spool, DateTimeOffset nowUtc) =>
        said.Kind switch
        {
            BatchEventKind.Begun => new Begun
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.Paused => new Paused
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.Broken => new Broken
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.Resumed => new Resumed
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.Spliced => new Spliced
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.FinishedLow => new FinishedLow
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.Scrapped => new Scrapped
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.Released => new Released
            {
                Id = said.Id,
                BatchId = said.BatchId,
                TimeUtc = nowUtc,
            },
            BatchEventKind.SpoolTaken => new SpoolTaken
            {
                Id = said.Id,
                BatchId = said.BatchId,
                Spool = spool,
                Choice = said.Choice,
                TimeUtc = nowUtc,
            },
            BatchEventKind.MoreWanted => new MoreWanted
            {
                Id = said.Id,
                BatchId = said.BatchId,
                Coils = 0,
                Why = said.Note.Trim(),
                TimeUtc = nowUtc,
            },
            BatchEventKind.SignalAnswered => new SignalAnswered
            {
                Id = said.Id,
                BatchId = said.BatchId,
                Found = said.Note.Trim(),
                TimeUtc = nowUtc,
            },
            BatchEventKind.CauseFound => new CauseFound
            {
                Id = said.Id,
                BatchId = said.BatchId,
                Cause = CauseNames.KeyOf(said.Choice) ?? "",
                Note = said.Note.Trim(),
                TimeUtc = nowUtc,
            },
            BatchEventKind.Closed => new Closed
            {
                Id = said.Id,
                BatchId = said.BatchId,
                Coils = 0,
                Wanted = 0,
                Why = said.Note.Trim(),
                TimeUtc = nowUtc,
            },
            _ => throw new ArgumentException("An undo is made by UndoLastAsync.", nameof(said)),
        };
}
