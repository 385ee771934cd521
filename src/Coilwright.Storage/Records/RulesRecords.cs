using Coilwright.Storage.Model;
using Coilwright.Workshop.Rules;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Records;

/// <summary>The shop's rules.</summary>
internal sealed class RulesRecords(ShopDatabase database) : IRulesRecords
{
    public async Task<ShopRulesRecord?> NewestAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        return await context
            .Rules.AsNoTracking()
            .OrderByDescending(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .FirstOrDefaultAsync(cancel);
    }

    public Task AddAsync(ShopRulesRecord rules, CancellationToken cancel) =>
        database.AddOnceAsync(rules, row => row.Id == rules.Id, cancel);
}
