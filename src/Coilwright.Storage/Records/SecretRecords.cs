using Coilwright.Storage.Model;
using Coilwright.Workshop.Secrets;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Records;

/// <summary>Recipes that are secret.</summary>
internal sealed class SecretRecords(ShopDatabase database) : ISecretRecords
{
    public async Task<IReadOnlySet<Guid>> RecipesAsync(CancellationToken cancel)
    {
        await using ShopContext context = database.Open();
        List<SecretMarkRecord> marks = await context
            .SecretMarks.AsNoTracking()
            .OrderBy(row => EF.Property<long>(row, ShopContext.EntryOrder))
            .ToListAsync(cancel);
        return marks.GroupBy(mark => mark.RecipeId).Where(of => of.Last().IsSecret).Select(of => of.Key).ToHashSet();
    }

    public Task AddAsync(SecretMarkRecord mark, CancellationToken cancel) => database.AddOnceAsync(mark, row => row.Id == mark.Id, cancel);
}
