using System.Data.Common;
using System.Globalization;
using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop;
using Coilwright.Workshop.Backups;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Coilwright.Storage.Postgres;

/// <summary>Whether a shop on PostgreSQL can be trusted, as far as a program can say that is not the server.</summary>
internal static class PostgresVerification
{
    private const string Guards =
        "SELECT t.tgname::text FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_namespace n ON n.oid = c.relnamespace "
        + "WHERE NOT t.tgisinternal AND t.tgenabled <> 'D' AND n.nspname = current_schema()";

    /// <summary>Counts its tables, and names guards that were taken away.</summary>
    /// <exception cref="ShopFileException">It is not there, is no shop, cannot be reached, or was written by a newer version.</exception>
    public static Task<ShopCheck> CheckAsync(PostgresAddress address, CancellationToken cancel) =>
        PostgresRefusal.GuardAsync(address, async () =>
        {
            await using ShopRecords shop = await PostgresShop.OpenAsync(address, cancel);
            await using ShopContext context = shop.Open();
            ShopFinding[] findings =
            [
                .. (await MissingGuardsAsync(context, cancel)).Select(guard => new ShopFinding(
                    $"the guard {guard} is missing or switched off: records could be changed",
                    "copy the shop into a new database, which has all guards: coilwright move --to CONNECTION"
                )),
            ];
            return new ShopCheck(address.Shown, await ContentsAsync(shop, context, cancel), 0, findings)
            {
                PagesRead = false,
                Notes = ["whether its pages are sound is for the server to say: data checksums, and pg_amcheck"],
            };
        });

    /// <summary>Reads the records of a shop.</summary>
    /// <exception cref="ShopFileException">It is not there, or is no shop.</exception>
    public static async Task<T> LookAsync<T>(PostgresAddress address, Func<IShopRecords, Task<T>> read, CancellationToken cancel)
    {
        await using ShopRecords shop = await PostgresShop.OpenAsync(address, cancel);
        return await read(shop);
    }

    private static async Task<IReadOnlyList<string>> MissingGuardsAsync(ShopContext context, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        HashSet<string> there = new(StringComparer.Ordinal);
        await using NpgsqlCommand command = new(Guards, (NpgsqlConnection)context.Database.GetDbConnection());
        await using NpgsqlDataReader reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            there.Add(reader.GetString(0));
        }

        return [.. GuardedTables.Names.Where(name => !there.Contains(name))];
    }

    private static async Task<ShopContents> ContentsAsync(ShopRecords records, ShopContext context, CancellationToken cancel)
    {
        await using DbTransaction moment = await ShopSnapshot.MomentAsync(context, cancel);
        Dictionary<string, long> rows = new(StringComparer.Ordinal);
        foreach (string table in context.Model.GetEntityTypes().Select(entity => entity.GetTableName()!))
        {
#pragma warning disable CA2100 // names of the program's own tables
            await using DbCommand command = moment.Connection!.CreateCommand();
            command.CommandText = $"SELECT count(*) FROM \"{table}\"";
#pragma warning restore CA2100
            rows[table] = Convert.ToInt64(await command.ExecuteScalarAsync(cancel), CultureInfo.InvariantCulture);
        }

        DateTimeOffset? newest = await records.NewestRecordTimeAsync(cancel);
        ShopContext.ShopRow shop = await context.Shop.AsNoTracking().SingleAsync(cancel);
        return new ShopContents(shop.Name, shop.CreatedUtc, await PostgresShop.VersionAsync(context, cancel), newest, rows);
    }
}
