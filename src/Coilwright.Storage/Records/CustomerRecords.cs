using Coilwright.Storage.Model;
using Coilwright.Workshop.Customers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>Customers.</summary>
internal sealed class CustomerRecords(ShopDatabase database) : ICustomerRecords
{
    public async Task<IReadOnlyList<CustomerRecord>> AllAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Customers.AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel);
    }

    public async Task<bool> AddAsync(CustomerRecord customer, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (
            await context
                .Customers.AsNoTracking()
                .FirstOrDefaultAsync(row => row.Id == customer.Id || row.Reference == customer.Reference, cancel) is
            { } there
        )
        {
            return there.Id == customer.Id;
        }

        context.Add(customer);
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
        return true;
    }

    public async Task EraseAsync(Guid id, DateTimeOffset timeUtc, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        await database.OverwriteAsync(
            context,
            () =>
                context
                    .Customers.Where(row => row.Id == id && row.ErasedUtc == null)
                    .ExecuteUpdateAsync(set => set.SetProperty(row => row.Name, "").SetProperty(row => row.ErasedUtc, timeUtc), cancel),
            cancel
        );
    }
}
