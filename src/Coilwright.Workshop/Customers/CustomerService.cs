using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Customers;

/// <summary>The shop's customers.</summary>
public sealed class CustomerService(ICustomerRecords records, TimeProvider clock)
{
    /// <summary>Enters a customer, or gives every problem.</summary>
    public async Task<IReadOnlyList<Problem>> AddAsync(Guid id, string reference, string name, CancellationToken cancel)
    {
        string tidy = reference.Trim(),
            said = name.Trim();
        List<Problem> problems = [];
        if (tidy.Length is 0 or > 40)
        {
            problems.Add(new Problem("customer", "a customer needs a reference", reference, "1 to 40 letters, not the name"));
        }

        if (said.Length > 200)
        {
            problems.Add(new Problem("name", "this is too long for a name", null, "up to 200 letters"));
        }

        if (said.Length > 0 && string.Equals(said, tidy, StringComparison.OrdinalIgnoreCase))
        {
            problems.Add(
                new Problem(
                    "customer",
                    "the reference is the name: it could not be erased",
                    reference,
                    "a reference of the shop's own, for example K-031"
                )
            );
        }

        if (
            problems.Count == 0
            && !await records.AddAsync(new CustomerRecord(id, tidy, said, clock.GetUtcNow()), cancel).ConfigureAwait(false)
        )
        {
            problems.Add(new Problem("customer", "another customer has this reference already", tidy, "a reference of its own"));
        }

        return problems;
    }

    /// <summary>A customer by its reference; null when there is none.</summary>
    public async Task<CustomerRecord?> FindAsync(string reference, CancellationToken cancel) =>
        (await records.AllAsync(cancel).ConfigureAwait(false)).FirstOrDefault(one =>
            string.Equals(one.Reference, reference.Trim(), StringComparison.OrdinalIgnoreCase)
        );

    /// <summary>Erases a customer's name; the reference and what was shipped stay.</summary>
    public async Task<IReadOnlyList<Problem>> EraseAsync(string reference, CancellationToken cancel)
    {
        if (await FindAsync(reference, cancel).ConfigureAwait(false) is not { } customer)
        {
            return [new Problem("customer", "there is no such customer", reference)];
        }

        await records.EraseAsync(customer.Id, clock.GetUtcNow(), cancel).ConfigureAwait(false);
        return [];
    }
}
