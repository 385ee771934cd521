using Coilwright.Storage.Backups;
using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Exports;
using Coilwright.Workshop.Steps;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Sqlite;

/// <summary>A shop in one SQLite file.</summary>
/// <param name="path">The file.</param>
/// <param name="connectionString">How it is opened.</param>
internal sealed class SqliteDatabase(string path, string connectionString) : ShopDatabase
{
    private readonly DbContextOptions<ShopContext> _options = ShopContextOptions.For(connectionString);

    public override IShopBackups Backups { get; } = new SqliteBackups(path, connectionString);

    public override IShopTransfer Transfer => new ShopTransfer(this);

    public override ShopContext Open() => new(_options);

    public override Task<IReadOnlyList<ChartReading>> ChartReadingsAsync(ChartQuery query, CancellationToken cancel) =>
        SqliteChartReadings.ReadAsync(connectionString, query, cancel);

    public override IQueryable<PieceEventRow> WithText(ShopContext context, string kind, string property, string text) =>
        context.PieceEvents.FromSql(
            $"""
            SELECT * FROM PieceEvents
            WHERE Kind = {kind} AND json_extract(Payload, {"$." + property}) = {text} COLLATE NOCASE
            """
        );

    /// <summary>Its own comparison takes letters of the alphabet without regard to case.</summary>
    public override IQueryable<InkMixRecord> MixesWith(ShopContext context, string label, string within) =>
        context.InkMixes.Where(row => row.Label == label || EF.Functions.Like(row.Lots, within, "\\"));

    /// <summary>A file follows the greatest number by itself.</summary>
    public override Task FollowOrderAsync(ShopContext context, IReadOnlyList<string> tables, CancellationToken cancel) =>
        Task.CompletedTask;

    public override async Task OverwriteAsync(ShopContext context, Func<Task> erase, CancellationToken cancel)
    {
        await context.Database.ExecuteSqlRawAsync("PRAGMA secure_delete = ON", cancel);
        await erase();
        await context.Database.ExecuteSqlRawAsync("PRAGMA wal_checkpoint(TRUNCATE)", cancel);
    }

    /// <summary>Closes the file; the write-ahead log is folded into it when no one else has it open.</summary>
    public override ValueTask DisposeAsync()
    {
        using SqliteConnection connection = new(connectionString);
        SqliteConnection.ClearPool(connection);
        return ValueTask.CompletedTask;
    }
}
