namespace Coilwright.Workshop.Backups;

/// <summary>Backups of the open shop: what a store must do for them. Safe while others write.</summary>
public interface IShopBackups
{
    /// <summary>The shop's file.</summary>
    string ShopPath { get; }

    /// <summary>What to do instead, where the store's own keeper takes backups; empty where this program takes them.</summary>
    string Instead => "";

    /// <summary>
    /// Writes a backup into a folder and reads it back; it has its name only when all of it was found as it should be.
    /// </summary>
    /// <param name="folder">Where to; it is made when it is not there.</param>
    /// <param name="program">Version of the program.</param>
    /// <param name="nowUtc">Now; it stands in the name.</param>
    /// <param name="cancel">Gives up; nothing half-written is left.</param>
    /// <exception cref="BackupException">None could be written, or it was read back otherwise than it was written.</exception>
    Task<BackupFile> TakeAsync(string folder, string program, DateTimeOffset nowUtc, CancellationToken cancel);

    /// <summary>Backups of this shop in a folder, newest first, and last what has such a name and cannot be read.</summary>
    /// <exception cref="BackupException">The folder cannot be read.</exception>
    Task<IReadOnlyList<BackupFile>> InFolderAsync(string folder, CancellationToken cancel);

    /// <summary>Removes a backup that <see cref="InFolderAsync"/> named.</summary>
    /// <exception cref="BackupException">It cannot be removed.</exception>
    void Remove(BackupFile backup);

    /// <summary>Keeps the file open, and seen to be so by other programs, until what is given back is disposed.</summary>
    /// <exception cref="BackupException">It cannot be read.</exception>
    Task<IAsyncDisposable> HoldAsync(CancellationToken cancel);

    /// <summary>The volume that a folder or file lies on, as the system names it.</summary>
    string VolumeOf(string path);
}
