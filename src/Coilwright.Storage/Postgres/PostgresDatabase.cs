using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Exports;
using Coilwright.Workshop.Steps;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Coilwright.Storage.Postgres;

/// <summary>A shop in one database of a PostgreSQL server, which several programs may have open.</summary>
internal sealed class PostgresDatabase : ShopDatabase
{
    private readonly NpgsqlDataSource _source;
    private readonly DbContextOptions<PostgresShopContext> _options;

    public PostgresDatabase(PostgresAddress address)
    {
        _source = NpgsqlDataSource.Create(address.ConnectionString);
        _options = new DbContextOptionsBuilder<PostgresShopContext>().UseNpgsql(_source).AddInterceptors(new OneWriter()).Options;
        Backups = new PostgresBackups(address);
    }

    public override IShopBackups Backups { get; }

    public override IShopTransfer Transfer => new ShopTransfer(this);

    public override ShopContext Open() => new PostgresShopContext(_options);

    public override Task<IReadOnlyList<ChartReading>> ChartReadingsAsync(ChartQuery query, CancellationToken cancel) =>
        PostgresChartReadings.ReadAsync(_source, query, cancel);

    public override IQueryable<PieceEventRow> WithText(ShopContext context, string kind, string property, string text) =>
        context.PieceEvents.FromSql(
            $"""
            SELECT * FROM "PieceEvents"
            WHERE "Kind" = {kind} AND ("Payload"::json ->> {property}) COLLATE "NOCASE" = {text}
            """
        );

    public override IQueryable<InkMixRecord> MixesWith(ShopContext context, string label, string within) =>
        context.InkMixes.Where(row => row.Label == label || EF.Functions.ILike(row.Lots, within, "\\"));

    public override async Task FollowOrderAsync(ShopContext context, IReadOnlyList<string> tables, CancellationToken cancel)
    {
        foreach (string table in tables)
        {
            string quoted = TransferRow.Quoted(table);
#pragma warning disable EF1002, EF1003 // names of the program's own tables
            await context.Database.ExecuteSqlRawAsync(
                $"SELECT setval(pg_get_serial_sequence('{quoted}', 'EntryOrder'), "
                    + $"(SELECT coalesce(max(\"EntryOrder\"), 0) + 1 FROM {quoted}), false)",
                cancel
            );
#pragma warning restore EF1002, EF1003
        }
    }

    /// <summary>
    /// The table is written anew without the old text. The server's own log and its backups keep it for as long as they are kept.
    /// </summary>
    public override async Task OverwriteAsync(ShopContext context, Func<Task> erase, CancellationToken cancel)
    {
        await erase();
        try
        {
            await context.Database.ExecuteSqlRawAsync("VACUUM (FULL) \"Customers\"", cancel);
        }
        catch (PostgresException busy) when (busy.SqlState is PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.QueryCanceled)
        {
            // somebody reads the table for long, such as a dump: it is erased, and written anew with the next one
        }
    }

    public override ValueTask DisposeAsync() => _source.DisposeAsync();
}
