namespace Coilwright.Workshop.Customers;

/// <summary>What a store must do for customers.</summary>
public interface ICustomerRecords
{
    /// <summary>Every customer in order of entry.</summary>
    Task<IReadOnlyList<CustomerRecord>> AllAsync(CancellationToken cancel);

    /// <summary>Adds a customer; false when another one has its reference. The same id twice is kept once.</summary>
    Task<bool> AddAsync(CustomerRecord customer, CancellationToken cancel);

    /// <summary>Erases the name for good, in the file too; the reference and every trace stay.</summary>
    Task EraseAsync(Guid id, DateTimeOffset timeUtc, CancellationToken cancel);
}
