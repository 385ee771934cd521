using System.CommandLine;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>coilwright batch more BATCH COUNT --reason TEXT: a batch ends at its number; this raises it.</summary>
internal static class BatchMoreCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> batch = new("BATCH") { Description = "Name of the batch" },
            count = new("COUNT") { Description = "How many coils more" };
        Option<string> reason = ShopAction.Text("--reason", "Why more are wanted");
        return ShopAction.Build(
            desk,
            "more",
            "Asks for more coils than a batch was begun with",
            [batch, count, reason],
            async (open, parsed, person, cancel) =>
            {
                Guid id = (await open.FindBatchAsync(parsed.GetRequiredValue(batch), cancel).ConfigureAwait(false)).Batch.Id;
                BatchEventEntry said = new()
                {
                    Id = Guid.NewGuid(),
                    BatchId = id,
                    Kind = BatchEventKind.MoreWanted,
                    Counter = parsed.GetRequiredValue(count),
                    Note = parsed.GetRequiredValue(reason),
                    Person = person,
                };
                IReadOnlyList<Problem> problems = await open.Services.Run.RecordEventAsync(said, cancel).ConfigureAwait(false);
                BatchProgress run = await open.Services.Run.StatusAsync(id, cancel).ConfigureAwait(false)
                    ?? throw new InvalidOperationException("A batch without standing.");
                return (
                    [
                        .. problems.Select(problem =>
                            problem with
                            {
                                Field = problem.Field switch
                                {
                                    "counter" => "COUNT",
                                    "note" => "--reason",
                                    var field => field,
                                },
                            }
                        ),
                    ],
                    $"Batch {run.Status.Batch.Name}: {run.Status.CountWords}"
                );
            }
        );
    }
}
