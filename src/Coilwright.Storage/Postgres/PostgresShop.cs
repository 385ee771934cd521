using System.Globalization;
using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace Coilwright.Storage.Postgres;

/// <summary>
/// One shop, one database of a PostgreSQL server. Makes it, opens it, and refuses what is no shop or is newer: unread and untouched.
/// </summary>
internal static class PostgresShop
{
    private const string HowMany =
        "SELECT count(*) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace WHERE c.relkind IN ('r', 'p') "
        + "AND n.nspname NOT IN ('pg_catalog', 'information_schema') AND n.nspname NOT LIKE 'pg\\_%'";

    private const string Ours = "SELECT to_regclass('\"CoilwrightSchema\"') IS NOT NULL";

    private const string Version = "SELECT max(\"Version\") FROM \"CoilwrightSchema\"";

    /// <summary>False for a database in which there is nothing yet.</summary>
    /// <exception cref="ShopFileException">It cannot be reached.</exception>
    public static Task<bool> ExistsAsync(PostgresAddress address, CancellationToken cancel) =>
        PostgresRefusal.GuardAsync(address, async () =>
        {
            await using PostgresDatabase database = new(address);
            await using ShopContext context = database.Open();
            return await HoldsSomethingAsync(context, cancel);
        });

    /// <summary>Makes a shop in a database in which there is nothing yet: all of it in one unit of work.</summary>
    /// <exception cref="ShopFileException">There is something in it, or it cannot be reached or written.</exception>
    public static Task<ShopRecords> CreateAsync(
        PostgresAddress address,
        string shopName,
        DateTimeOffset nowUtc,
        CancellationToken cancel
    ) => PostgresRefusal.GuardAsync(address, async () =>
        {
            await using (PostgresDatabase database = new(address))
            {
                await using ShopContext context = database.Open();
                await FillAsync(address, context, shopName, nowUtc, cancel);
            }

            return await OpenAsync(address, cancel);
        });

    /// <summary>Opens a shop; an older one is brought up to date first.</summary>
    /// <exception cref="ShopFileException">It is not there, is no shop, cannot be reached, or was written by a newer version.</exception>
    public static Task<ShopRecords> OpenAsync(PostgresAddress address, CancellationToken cancel) =>
        PostgresRefusal.GuardAsync(address, async () =>
        {
            PostgresDatabase database = new(address);
            try
            {
                await using ShopContext context = database.Open();
                await CheckAsync(address, context, cancel);
                if ((await context.Database.GetPendingMigrationsAsync(cancel)).Any())
                {
                    await context.Database.MigrateAsync(cancel); // it keeps a second program waiting
                }

                return new ShopRecords(database);
            }
            catch
            {
                await database.DisposeAsync();
                throw;
            }
        });

    /// <summary>Takes away a shop that was just made and could not be filled; one that holds records stays.</summary>
    public static async Task RemoveEmptyAsync(PostgresAddress address, CancellationToken cancel)
    {
        await using PostgresDatabase database = new(address);
        await using ShopContext context = database.Open();
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        string[] tables = [.. context.Model.GetEntityTypes().Select(entity => $"\"{entity.GetTableName()}\"")];
        foreach (string table in tables.Where(table => table != "\"Shop\""))
        {
            if (await OneAsync(context, $"SELECT EXISTS (SELECT 1 FROM {table})", cancel) is true)
            {
                return;
            }
        }

        string all = string.Join(", ", [.. tables, "\"CoilwrightSchema\"", "\"__EFMigrationsHistory\""]);
        await OneAsync(
            context,
            $"DROP TABLE {all} CASCADE; DROP FUNCTION coilwright_refuse(); DROP COLLATION IF EXISTS \"NOCASE\";",
            cancel
        );
        await alone.CommitAsync(cancel);
    }

    /// <summary>Version of the shop's records.</summary>
    public static async Task<int> VersionAsync(ShopContext context, CancellationToken cancel) =>
        Convert.ToInt32(await OneAsync(context, Version, cancel), CultureInfo.InvariantCulture);

    private static async Task FillAsync(
        PostgresAddress address,
        ShopContext context,
        string shopName,
        DateTimeOffset nowUtc,
        CancellationToken cancel
    )
    {
        await using IDbContextTransaction alone = await context.Database.BeginTransactionAsync(cancel);
        if (await HoldsSomethingAsync(context, cancel))
        {
            throw new ShopFileException($"{address.Shown}: there is something in this database already; a new shop needs one of its own.");
        }

        if (await OneAsync(context, "SHOW server_encoding", cancel) is not "UTF8")
        {
            throw new ShopFileException(
                $"{address.Shown}: this database does not keep text as UTF-8; make one that does: "
                    + "createdb --encoding=UTF8 --template=template0."
            );
        }

        string made = context.GetService<IMigrator>().GenerateScript(options: MigrationsSqlGenerationOptions.NoTransactions);
        await OneAsync(context, made, cancel);
        context.Add(new ShopContext.ShopRow(1, shopName, nowUtc));
        await context.SaveChangesAsync(cancel);
        await alone.CommitAsync(cancel);
    }

    /// <summary>Refuses what is no shop, and what a newer program wrote.</summary>
    private static async Task CheckAsync(PostgresAddress address, ShopContext context, CancellationToken cancel)
    {
        if (await OneAsync(context, Ours, cancel) is not true)
        {
            throw new ShopFileException(
                await HoldsSomethingAsync(context, cancel)
                    ? $"{address.Shown}: this is a database of another program, not a shop's. Nothing in it was changed."
                    : $"{address.Shown}: there is no shop in this database yet."
            );
        }

        ShopHeader.RefuseNewer(address.Shown, await VersionAsync(context, cancel));
    }

    private static async Task<bool> HoldsSomethingAsync(ShopContext context, CancellationToken cancel) =>
        Convert.ToInt64(await OneAsync(context, HowMany, cancel), CultureInfo.InvariantCulture) > 0;

#pragma warning disable CA2100 // constants, the program's own migrations, and names of its own tables
    private static async Task<object?> OneAsync(ShopContext context, string sql, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        try
        {
            await using NpgsqlCommand command = ((NpgsqlConnection)context.Database.GetDbConnection()).CreateCommand();
            command.CommandText = sql;
            command.Transaction = context.Database.CurrentTransaction?.GetDbTransaction() as NpgsqlTransaction;
            return await command.ExecuteScalarAsync(cancel);
        }
        finally
        {
            await context.Database.CloseConnectionAsync();
        }
    }
#pragma warning restore CA2100
}
