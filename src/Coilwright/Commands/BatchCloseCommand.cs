using System.CommandLine;
using Coilwright.Formats.Records;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>coilwright batch close BATCH --reason TEXT, batch reopen BATCH: a batch that ends before its number.</summary>
internal static class BatchCloseCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        Option<string> reason = ShopAction.Text("--reason", "Why it ends here");
        Option<bool> json = ShopOptions.Json();
        const string Does = "Ends a batch before its number: it stands on no board any more, and nothing is entered into it";
        return ShopAction.Build(desk, "close", Does, [batch, reason, json], async (open, parsed, person, cancel) =>
        {
            Guid id = (await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false)).Batch.Id;
            BatchEventEntry said = new()
            {
                Id = Guid.NewGuid(),
                BatchId = id,
                Kind = BatchEventKind.Closed,
                Note = parsed.GetRequiredValue(reason),
                Person = person,
            };
            IReadOnlyList<Problem> problems = await open.Services.Run.RecordEventAsync(said, cancel).ConfigureAwait(false);
            return (
                [.. problems.Select(problem => problem.Field == "note" ? problem with { Field = "--reason" } : problem)],
                await TellAsync(open, id, parsed.GetValue(json), cancel).ConfigureAwait(false)
            );
        });
    }

    public static Command BuildReopen(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" };
        Option<bool> json = ShopOptions.Json();
        return ShopAction.Build(desk, "reopen", "Takes the closing of a batch back", [batch, json], async (open, parsed, person, cancel) =>
        {
            Guid id = (await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false)).Batch.Id;
            IReadOnlyList<Problem> problems = await open.Services.Run.ReopenAsync(id, Guid.NewGuid(), person, cancel).ConfigureAwait(false);
            return (problems, await TellAsync(open, id, parsed.GetValue(json), cancel).ConfigureAwait(false));
        });
    }

    private static async Task<string> TellAsync(Input.OpenShop open, Guid id, bool json, CancellationToken cancel)
    {
        BatchStatus status = await open.Services.Winding.StatusAsync(id, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException("A batch without standing.");
        return json
            ? BatchListJson.Write(
                [await open.Services.Summaries.OfAsync(status.Batch, cancel).ConfigureAwait(false)],
                new Dictionary<Guid, string>()
            )
            : $"Batch {status.Batch.Name}: {status.CountWords}";
    }
}
