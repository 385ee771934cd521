using Coilwright.Storage.Backups;
using Coilwright.Workshop.Backups;

namespace Coilwright.Storage.Postgres;

/// <summary>Backups of a shop on PostgreSQL are the server's: here stands how to take one.</summary>
/// <param name="address">Where the shop is.</param>
internal sealed class PostgresBackups(PostgresAddress address) : IShopBackups
{
    public string ShopPath => address.Shown;

    public string Instead =>
        $"{address.Shown}: a shop on PostgreSQL is backed up by its server: pg_dump --format=custom --file=shop.dump "
        + $"\"{address.Shown}\". Or copy it into a file: coilwright move --shop \"{address.Shown}\" --to FILE.";

    public Task<BackupFile> TakeAsync(string folder, string program, DateTimeOffset nowUtc, CancellationToken cancel) =>
        throw new BackupException(Instead);

    public Task<IReadOnlyList<BackupFile>> InFolderAsync(string folder, CancellationToken cancel) =>
        Task.FromResult<IReadOnlyList<BackupFile>>([]);

    public void Remove(BackupFile backup) => throw new BackupException(Instead);

    /// <summary>A server needs nobody to keep its files open.</summary>
    public Task<IAsyncDisposable> HoldAsync(CancellationToken cancel) => Task.FromResult<IAsyncDisposable>(new Nothing());

    public string VolumeOf(string path) => Volumes.Of(path);

    private sealed class Nothing : IAsyncDisposable
    {
        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
