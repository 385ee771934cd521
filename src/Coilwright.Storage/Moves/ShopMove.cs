using System.Data.Common;
using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop.Backups;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Coilwright.Storage.Moves;

/// <summary>
/// Copies a whole shop from one database into an empty one: every table as it is at one moment, in one unit of work, read back and compared
/// before that is committed.
/// </summary>
public static class ShopMove
{
    /// <summary>Copies and compares.</summary>
    /// <param name="from">Read alone.</param>
    /// <param name="to">A shop without records; it gets the name and the birth of the other.</param>
    /// <param name="progress">Told how many rows were copied, of how many; null for nobody.</param>
    /// <param name="cancel">Gives up: the target stays empty.</param>
    /// <returns>Every table, found to be the same in both.</returns>
    /// <exception cref="ShopFileException">The target holds records, takes a row not, or was read back otherwise.</exception>
    public static async Task<IReadOnlyList<MovedTable>> RunAsync(
        ShopRecords from,
        ShopRecords to,
        IProgress<(int Done, int Of)>? progress,
        CancellationToken cancel
    )
    {
        await using ShopContext source = from.Open(),
            target = to.Open();
        await source.Database.OpenConnectionAsync(cancel);
        await using DbTransaction moment = await ShopSnapshot.MomentAsync(source, cancel);
        await using IDbContextTransaction alone = await target.Database.BeginTransactionAsync(cancel);
        IReadOnlyList<TableOfShop> tables = TableOfShop.All(source);
        DbTransaction writing = alone.GetDbTransaction();
        await RefuseFullAsync(tables, writing, cancel);
        CopyCount count = new(progress, await AllRowsAsync(tables, moment, cancel));
        List<MovedTable> moved = [];
        foreach (TableOfShop table in tables)
        {
            moved.Add(await MoveAsync(table, moment, writing, count, cancel));
        }

        await to.FollowOrderAsync(target, [.. tables.Where(one => one.IsCounted).Select(one => one.Name)], cancel);
        await alone.CommitAsync(cancel);
        return moved;
    }

    private static async Task<MovedTable> MoveAsync(
        TableOfShop table,
        DbTransaction from,
        DbTransaction to,
        CopyCount count,
        CancellationToken cancel
    )
    {
        try
        {
            await table.ClearNameAsync(to, cancel);
            MovedTable written = await table.CopyAsync(from, to, count, cancel),
                back = await table.HashAsync(to, cancel);
            return written == back
                ? written
                : throw new ShopFileException(
                    FormattableString.Invariant(
                        $"{table.Name} was read back otherwise than it was written ({back.Rows} rows of {written.Rows}); nothing was kept."
                    )
                );
        }
        catch (DbException refused) when (refused is PostgresException or SqliteException && StorageFault.Of(refused) is null)
        {
            string why = refused is PostgresException said ? said.MessageText : refused.Message;
            throw new ShopFileException($"a row of {table.Name} cannot stand in the other database: {why}. Nothing was kept.", refused);
        }
    }

    private static async Task RefuseFullAsync(IReadOnlyList<TableOfShop> tables, DbTransaction to, CancellationToken cancel)
    {
        List<string> full = [];
        foreach (TableOfShop table in tables.Where(one => !one.IsName))
        {
            long rows = await table.CountAsync(to, cancel);
            full.AddRange(rows > 0 ? [FormattableString.Invariant($"{table.Name} {rows}")] : Array.Empty<string>());
        }

        if (full.Count > 0)
        {
            throw new ShopFileException(
                $"the target holds records already ({string.Join(", ", full)}); a shop is moved to where there is none, or an empty one."
            );
        }
    }

    private static async Task<long> AllRowsAsync(IReadOnlyList<TableOfShop> tables, DbTransaction from, CancellationToken cancel)
    {
        long rows = 0;
        foreach (TableOfShop table in tables)
        {
            rows += await table.CountAsync(from, cancel);
        }

        return rows;
    }
}
