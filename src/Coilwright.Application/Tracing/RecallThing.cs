using Coilwright.Application.Printing;
using Coilwright.Papers.Recalls;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Application.Tracing;

/// <summary>A person recalls a spool, a lot, a batch or whatever else turned out bad: the list, and a letter for each customer.</summary>
public sealed class RecallThing(TraceService trace, ICustomerRecords customers, PrintPiecePaper papers)
{
    /// <summary>A list for everything of this name, not of a part of it; empty where nothing is called so.</summary>
    /// <param name="name">As people call it.</param>
    /// <param name="cancel">Stops it.</param>
    public async Task<IReadOnlyList<RecallList>> FindAsync(string name, CancellationToken cancel)
    {
        IReadOnlyList<TraceHit> hits = await trace.FindAsync(name, cancel).ConfigureAwait(false);
        return RecallList.FromHits(name.Trim(), hits, await customers.AllAsync(cancel).ConfigureAwait(false));
    }

    /// <summary>The list to print and tick off.</summary>
    public async Task<Sheet> ListAsync(RecallList list, CancellationToken cancel) =>
        RecallPapers.List(list, (await papers.GroundAsync(cancel).ConfigureAwait(false)).Heading(""));

    /// <summary>The letter to one of its customers; null when the customer has none of it.</summary>
    /// <param name="list">What is recalled.</param>
    /// <param name="customer">Reference of the customer.</param>
    /// <param name="reason">What is wrong, in the shop's words; empty leaves room to write.</param>
    /// <param name="ask">What the customer is asked to do; empty leaves room to write.</param>
    /// <param name="cancel">Stops it.</param>
    public async Task<Sheet?> LetterAsync(RecallList list, string customer, string reason, string ask, CancellationToken cancel) =>
        list.Customers.FirstOrDefault(one => string.Equals(one.Customer.Reference, customer, StringComparison.OrdinalIgnoreCase))
            is { } found
            ? RecallPapers.Letter(found, reason.Trim(), ask.Trim(), (await papers.GroundAsync(cancel).ConfigureAwait(false)).Heading(""))
            : null;
}
