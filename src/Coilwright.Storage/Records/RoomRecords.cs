using Coilwright.Storage.Model;
using Coilwright.Workshop;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Records;

/// <summary>Temperatures of the winding room.</summary>
internal sealed class RoomRecords(ShopDatabase database) : IRoomRecords
{
    public async Task<RoomTemperature?> LatestAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .RoomTemperatures.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .FirstOrDefaultAsync(cancel);
    }

    public async Task AddAsync(RoomTemperature entry, CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        context.Add(entry);
        await context.SaveChangesAsync(cancel);
    }
}
