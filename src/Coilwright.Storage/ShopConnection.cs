using Coilwright.Storage.Postgres;
using Coilwright.Storage.Records;

namespace Coilwright.Storage;

/// <summary>
/// Where a shop is: a file's path, or <c>postgres://user@host:port/database</c>. Whichever it is, what is opened behaves the same.
/// </summary>
public static class ShopConnection
{
    /// <summary>True for a shop in a file of its own; false for one on a server.</summary>
    public static bool IsFile(string connection) => !PostgresAddress.IsOne(connection);

    /// <summary>False where a new shop may be made: no file, or a database in which there is nothing.</summary>
    /// <exception cref="ShopFileException">The server cannot be reached, or refuses.</exception>
    public static Task<bool> ExistsAsync(string connection, CancellationToken cancel = default) =>
        IsFile(connection) ? Task.FromResult(File.Exists(connection)) : PostgresShop.ExistsAsync(PostgresAddress.Read(connection), cancel);

    /// <summary>Makes a new shop and opens it. It appears whole or not at all.</summary>
    /// <exception cref="ShopFileException">There is something already, or none can be made there.</exception>
    public static Task<ShopRecords> CreateAsync(
        string connection,
        string shopName,
        TimeProvider? clock = null,
        CancellationToken cancel = default
    ) =>
        IsFile(connection)
            ? ShopFile.CreateAsync(connection, shopName, clock, cancel)
            : PostgresShop.CreateAsync(PostgresAddress.Read(connection), shopName, (clock ?? TimeProvider.System).GetUtcNow(), cancel);

    /// <summary>Opens a shop; an older one is brought up to date first.</summary>
    /// <exception cref="ShopFileException">It is not there, is no shop, is damaged, cannot be reached, or is newer.</exception>
#pragma warning disable CA2000 // handed to the caller
    public static Task<ShopRecords> OpenAsync(string connection, CancellationToken cancel = default) =>
        IsFile(connection) ? ShopFile.OpenAsync(connection, cancel) : PostgresShop.OpenAsync(PostgresAddress.Read(connection), cancel);
#pragma warning restore CA2000

    /// <summary>Removes a shop that was just made and could not be filled; one that resists stays, empty.</summary>
    public static async Task RemoveEmptyAsync(string connection)
    {
        if (IsFile(connection))
        {
            ShopFile.RemoveEmpty(connection);
            return;
        }

        try
        {
            await PostgresShop.RemoveEmptyAsync(PostgresAddress.Read(connection), CancellationToken.None);
        }
        catch (Exception failure) when (failure is Npgsql.NpgsqlException or InvalidOperationException)
        {
            // an empty shop can be filled later
        }
    }
}
