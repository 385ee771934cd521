using Coilwright.Application.Composition;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Endpoints;

/// <summary>What happened at a winder, as a form or the outbox tells it.</summary>
/// <param name="Id">Client-made id.</param>
/// <param name="Kind">Name of the event.</param>
/// <param name="Tag">The coil; empty for the only one it can be, and always for a coil that is begun.</param>
/// <param name="Counter">What the counter showed; how many coils more are wanted.</param>
/// <param name="Spool">Label of a spool.</param>
/// <param name="Choice">"hold-turns" or "hold-ohms".</param>
/// <param name="Turns">Turns to wind.</param>
/// <param name="Machine">Name of the winder.</param>
/// <param name="Person">Who.</param>
/// <param name="Note">Why.</param>
internal sealed record BatchEventSubmission(
    Guid Id,
    string Kind,
    string Tag = "",
    string Counter = "",
    string Spool = "",
    string Choice = "",
    string Turns = "",
    string Machine = "",
    string Person = "",
    string Note = ""
)
{
    public static Problem NotSaid(string kind) => new("kind", "say what happened", kind);

    /// <summary>Records it; sent twice it is kept once.</summary>
    public async Task<IReadOnlyList<Problem>> TellAsync(Guid batchId, ShopServices shop, CancellationToken cancel)
    {
        if (!Enum.TryParse(Kind, ignoreCase: true, out BatchEventKind kind) || !Enum.IsDefined(kind))
        {
            return [NotSaid(Kind)];
        }

        if (kind == BatchEventKind.Undone)
        {
            return await shop.Run.UndoLastAsync(batchId, Id, Person, cancel);
        }

        return await shop.Run.RecordEventAsync(
            new BatchEventEntry
            {
                Id = Id,
                BatchId = batchId,
                Kind = kind,
                Tag = kind == BatchEventKind.Begun ? "" : Tag,
                Counter = kind is BatchEventKind.Paused or BatchEventKind.Broken or BatchEventKind.MoreWanted ? Counter : "",
                Spool = Spool,
                Choice = Choice,
                Turns = Turns,
                Machine = Machine,
                Person = Person,
                Note = Note,
            },
            cancel
        );
    }
}
