using Coilwright.Storage.Model;
using Coilwright.Workshop.Machines;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Records;

/// <summary>Winders.</summary>
internal sealed class MachineRecords(ShopDatabase database) : IMachineRecords
{
    public async Task<IReadOnlyList<MachineRecord>> AllAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context.Machines.AsNoTracking().OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder)).ToListAsync(cancel);
    }

    public Task AddAsync(MachineRecord machine, CancellationToken cancel) =>
        database.AddOnceAsync(machine, row => row.Id == machine.Id, cancel);
}
