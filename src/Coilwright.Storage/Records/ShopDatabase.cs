using System.Linq.Expressions;
using Coilwright.Storage.Model;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Exports;
using Coilwright.Workshop.Steps;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Coilwright.Storage.Records;

/// <summary>A shop's database, whichever it is: opens units of work, and does what one database does otherwise than another.</summary>
internal abstract class ShopDatabase : IAsyncDisposable
{
    /// <summary>Backups of it.</summary>
    public abstract IShopBackups Backups { get; }

    /// <summary>All of it, taken out or brought in whole.</summary>
    public abstract IShopTransfer Transfer { get; }

    /// <summary>A unit of work of its own: what is saved in it is durable when it is committed.</summary>
    public abstract ShopContext Open();

    /// <summary>Readings as a chart wants them, reading no further back than it must.</summary>
    public abstract Task<IReadOnlyList<ChartReading>> ChartReadingsAsync(ChartQuery query, CancellationToken cancel);

    /// <summary>Events of pieces of a kind whose property has this text, without regard to case.</summary>
    public abstract IQueryable<PieceEventRow> WithText(ShopContext context, string kind, string property, string text);

    /// <summary>Mixes of ink with this label, or with lots that match a pattern, without regard to case.</summary>
    public abstract IQueryable<InkMixRecord> MixesWith(ShopContext context, string label, string within);

    /// <summary>Lets the order of entry go on after rows that were copied in with theirs.</summary>
    public abstract Task FollowOrderAsync(ShopContext context, IReadOnlyList<string> tables, CancellationToken cancel);

    /// <summary>Erases so that the old text is overwritten where it stood, not only unlinked.</summary>
    public abstract Task OverwriteAsync(ShopContext context, Func<Task> erase, CancellationToken cancel);

    public abstract ValueTask DisposeAsync();

    /// <summary>Adds a row, and what belongs to it, unless one that counts as the same is there: all or none.</summary>
    public async Task AddOnceAsync<T>(T row, Expression<Func<T, bool>> same, CancellationToken cancel, Func<ShopContext, Task>? with = null)
        where T : class
    {
        await using ShopContext context = Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (!await context.Set<T>().AnyAsync(same, cancel))
        {
            context.Add(row);
            await context.SaveChangesAsync(cancel);
            if (with is not null)
            {
                await with(context);
            }

            await context.SaveChangesAsync(cancel);
            await alone.CommitAsync(cancel);
        }
    }
}
