#pragma warning disable CA2100 // statements are made of names of the program's own tables, quoted
using System.Data.Common;
using System.Globalization;
using System.Runtime.CompilerServices;
using Coilwright.Storage.Model;
using Coilwright.Workshop.Exports;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Sqlite;

/// <summary>A shop as it was at one moment: one reading transaction from the first look to the last.</summary>
internal sealed class ShopSnapshot : IShopSnapshot
{
    private readonly ShopContext _context;
    private readonly DbTransaction _moment;

    private ShopSnapshot(ShopContext context, DbTransaction moment, ShopContext.ShopRow shop)
    {
        (_context, _moment) = (context, moment);
        (Name, CreatedUtc) = (shop.Name, shop.CreatedUtc);
    }

    public string Name { get; }

    public DateTimeOffset CreatedUtc { get; }

    /// <summary>Begins the look; the context is closed with it.</summary>
    public static async Task<ShopSnapshot> BeginAsync(ShopContext context, CancellationToken cancel)
    {
        DbTransaction moment = await MomentAsync(context, cancel);
        return new ShopSnapshot(context, moment, await context.Shop.AsNoTracking().SingleAsync(cancel));
    }

    /// <summary>Everything read in it is of one moment; nobody is kept from writing.</summary>
    public static async Task<DbTransaction> MomentAsync(ShopContext context, CancellationToken cancel)
    {
        DbConnection connection = context.Database.GetDbConnection();
        DbTransaction moment = connection is SqliteConnection sqlite
            ? Deferred(sqlite)
            : await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);
        await context.Database.UseTransactionAsync(moment, cancel);
        return moment;
    }

    public async Task<long> CountAsync(ExportTable table, CancellationToken cancel)
    {
        await using DbCommand command = Command($"SELECT count(*) FROM {TransferRow.Quoted(table.Records)}");
        return Convert.ToInt64(await command.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture);
    }

    public async IAsyncEnumerable<object?[]> RowsAsync(ExportTable table, [EnumeratorCancellation] CancellationToken cancel)
    {
        IReadOnlyList<string> order = table.Order.Count > 0 ? table.Order : [ShopContext.EntryOrder];
        string columns = string.Join(", ", table.Columns.Select(column => TransferRow.Quoted(column.Property))),
            by = string.Join(", ", order.Select(TransferRow.Quoted));
        await using DbCommand command = Command($"SELECT {columns} FROM {TransferRow.Quoted(table.Records)} ORDER BY {by}");
        await using DbDataReader reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            yield return TransferRow.Read(table, reader);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _moment.DisposeAsync();
        await _context.DisposeAsync();
    }

    /// <summary>The other kind would wait for writers, and keep them waiting.</summary>
    private static SqliteTransaction Deferred(SqliteConnection connection) => connection.BeginTransaction(deferred: true);

    private DbCommand Command(string sql)
    {
        DbCommand command = _context.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        command.Transaction = _moment;
        return command;
    }
}
