#pragma warning disable CA2100 // statements below are constants and names of the file's own tables, quoted
using System.Globalization;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop.Backups;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Backups;

/// <summary>Reads a shop's file of any version without bringing it up to date and without changing anything.</summary>
internal sealed class ShopReader : IAsyncDisposable
{
    private const string Tables =
        "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' "
        + "AND name NOT LIKE '\\_\\_EF%' ESCAPE '\\' ORDER BY name";

    private const string Dated =
        "SELECT m.name FROM sqlite_master m JOIN pragma_table_info(m.name) c ON c.name = 'TimeUtc' WHERE m.type = 'table' ORDER BY m.name";

    /// <summary>Lines of a check that are told; a file with more is no better known by them.</summary>
    private const string Integrity = "PRAGMA integrity_check(20)";

    private readonly SqliteConnection _connection;

    private ShopReader(SqliteConnection connection) => _connection = connection;

    /// <summary>Opens the file alone, as if no write-ahead log lay beside it, or together with the log.</summary>
    public static async Task<ShopReader> OpenAsync(string path, bool alone, CancellationToken cancel)
    {
        SqliteConnection connection = new(ShopContextOptions.Looking(path, alone));
        try
        {
            await connection.OpenAsync(cancel);
            return new ShopReader(connection);
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    /// <summary>What it holds, of one moment.</summary>
    public async Task<ShopContents> ContentsAsync(CancellationToken cancel)
    {
        await using SqliteTransaction moment = Begin();
        Dictionary<string, long> rows = new(StringComparer.Ordinal);
        foreach (string table in await TextsAsync(Tables, cancel))
        {
            rows[table] = Number(await OneAsync($"SELECT count(*) FROM {Quoted(table)}", cancel));
        }

        List<DateTimeOffset> newest = [];
        foreach (string table in await TextsAsync(Dated, cancel))
        {
            if (await OneAsync($"SELECT max(TimeUtc) FROM {Quoted(table)}", cancel) is string time)
            {
                newest.Add(Moment(time));
            }
        }

        return new ShopContents(
            Convert.ToString(await OneAsync("SELECT Name FROM Shop", cancel), CultureInfo.InvariantCulture) ?? "",
            Moment(Convert.ToString(await OneAsync("SELECT CreatedUtc FROM Shop", cancel), CultureInfo.InvariantCulture) ?? ""),
            (int)Number(await OneAsync("PRAGMA user_version", cancel)),
            newest.Count > 0 ? newest.Max() : null,
            rows
        );
    }

    /// <summary>What the database's own check finds: every page, every index; empty for a sound file.</summary>
    public async Task<IReadOnlyList<string>> DamageAsync(CancellationToken cancel) =>
        [.. (await TextsAsync(Integrity, cancel)).Where(line => line != "ok")];

    /// <summary>Tables with rows that name a record that is not there, each with their number.</summary>
    public async Task<IReadOnlyList<(string Table, long Rows)>> LostLinksAsync(CancellationToken cancel)
    {
        IReadOnlyList<string> tables = await TextsAsync("SELECT \"table\" FROM pragma_foreign_key_check", cancel);
        return [.. tables.CountBy(table => table, StringComparer.Ordinal).Select(one => (one.Key, (long)one.Value))];
    }

    public ValueTask DisposeAsync() => _connection.DisposeAsync();

    /// <summary>Everything read until its end is of one moment; nobody is kept from writing.</summary>
    private SqliteTransaction Begin() => _connection.BeginTransaction(deferred: true);

    private static string Quoted(string table) => $"\"{table.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static long Number(object? value) => Convert.ToInt64(value, CultureInfo.InvariantCulture);

    internal static DateTimeOffset Moment(string text) =>
        DateTimeOffset.TryParse(
            text,
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
            out DateTimeOffset time
        )
            ? time
            : DateTimeOffset.UnixEpoch;

    private async Task<object?> OneAsync(string sql, CancellationToken cancel)
    {
        await using SqliteCommand command = _connection.CreateCommand();
        command.CommandText = sql;
        return await command.ExecuteScalarAsync(cancel);
    }

    private async Task<IReadOnlyList<string>> TextsAsync(string sql, CancellationToken cancel)
    {
        await using SqliteCommand command = _connection.CreateCommand();
        command.CommandText = sql;
        List<string> lines = [];
        await using SqliteDataReader reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            lines.Add(reader.GetString(0));
        }

        return lines;
    }
}
