using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Exports;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Sqlite;

/// <summary>Takes a shop's records out of its database as rows, and brings them into an empty one.</summary>
public sealed class ShopTransfer : IShopTransfer
{
    private readonly ShopDatabase _database;

    internal ShopTransfer(ShopDatabase database) => _database = database;

    /// <summary>Why a row cannot be what its table holds, beyond the kinds of its columns; null when it can.</summary>
    /// <param name="table">Its table.</param>
    /// <param name="row">Its values.</param>
    public static string? Complaint(ExportTable table, IReadOnlyList<object?> row) =>
        table.Records switch
        {
            "BatchEvents" => EventOf(() => TransferRow.BatchEvent(table, row).ToEvent()),
            "PieceEvents" => EventOf(() => TransferRow.PieceEvent(table, row).ToEvent()),
            _ => null,
        };

    public async Task<bool> IsEmptyAsync(CancellationToken cancel)
    {
        await using IShopSnapshot now = await LookAsync(cancel);
        foreach (ExportTable table in ExportTables.All)
        {
            if (await now.CountAsync(table, cancel) > 0)
            {
                return false;
            }
        }

        return true;
    }

    public async Task<IShopSnapshot> LookAsync(CancellationToken cancel)
    {
        ShopContext context = _database.Open();
        try
        {
            await context.Database.OpenConnectionAsync(cancel);
            return await ShopSnapshot.BeginAsync(context, cancel);
        }
        catch
        {
            await context.DisposeAsync();
            throw;
        }
    }

    public async Task<IShopFilling> FillAsync(string name, DateTimeOffset createdUtc, CancellationToken cancel)
    {
        ShopContext context = _database.Open();
        try
        {
            ShopFilling filling = new(context, await context.Database.BeginTransactionAsync(cancel));
            await context
                .Shop.Where(row => row.Id == 1)
                .ExecuteUpdateAsync(set => set.SetProperty(row => row.Name, name).SetProperty(row => row.CreatedUtc, createdUtc), cancel);
            return filling;
        }
        catch
        {
            await context.DisposeAsync();
            throw;
        }
    }

    private static string? EventOf(Action read)
    {
        try
        {
            read();
            return null;
        }
        catch (Exception unreadable)
            when (unreadable is System.Text.Json.JsonException or NotSupportedException or InvalidOperationException)
        {
            return "this is no event that this program knows: " + unreadable.Message.Split('\n')[0].Split(" Path:")[0].Trim();
        }
    }
}
