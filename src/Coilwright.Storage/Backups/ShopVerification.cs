using Coilwright.Storage.Postgres;
using Coilwright.Storage.Records;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop;
using Coilwright.Workshop.Backups;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Backups;

/// <summary>Whether a shop's file of any version can be trusted. Nothing is brought up to date, mended or written beside it.</summary>
public static class ShopVerification
{
    /// <summary>Reads all of a shop's file, with the log beside it, and names everything that is wrong.</summary>
    /// <exception cref="ShopFileException">It is not there, is no shop, or was written by a newer version.</exception>
    public static async Task<ShopCheck> CheckAsync(string path, CancellationToken cancel)
    {
        if (PostgresAddress.IsOne(path))
        {
            return await PostgresVerification.CheckAsync(PostgresAddress.Read(path), cancel);
        }

        try
        {
            ShopHeader.Check(path);
            return await WithCopyAsync(path, readable => CheckAsync(path, readable, cancel), cancel);
        }
        catch (Exception failure) when (failure is UnauthorizedAccessException or (IOException and not ShopFileException))
        {
            throw new ShopFileException($"{path}: the shop's file cannot be read: {failure.Message} Nothing in it was changed.", failure);
        }
    }

    /// <summary>Reads the records of a sound, up-to-date shop without writing anything into it or beside it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="read">Reads; the records are closed when it is done.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="ShopFileException">It is not there, or is no shop.</exception>
    public static async Task<T> LookAsync<T>(string path, Func<IShopRecords, Task<T>> read, CancellationToken cancel)
    {
        if (PostgresAddress.IsOne(path))
        {
            return await PostgresVerification.LookAsync(PostgresAddress.Read(path), read, cancel);
        }

        ShopHeader.Check(path);
        return await WithCopyAsync(
            path,
            async readable =>
            {
                string options = ShopContextOptions.Looking(readable, alone: WriteAheadLog.BytesBeside(readable) == 0);
                await using ShopRecords shop = new(new SqliteDatabase(readable, options));
                return await read(shop);
            },
            cancel
        );
    }

    /// <summary>What a shop's file holds now, with the log beside it.</summary>
    /// <exception cref="ShopFileException">It is no shop, or damaged.</exception>
    internal static async Task<ShopContents> ContentsAsync(string path, CancellationToken cancel)
    {
        ShopCheck check = await CheckAsync(path, cancel);
        return check is { IsSound: true, Contents: { } contents }
            ? contents
            : throw new ShopFileException($"{path}: {string.Join("; ", check.Findings.Select(one => one.What))}");
    }

    /// <summary>
    /// A log without its index would make the database write one beside it: file and log are then read as copies in the temporary folder.
    /// </summary>
    private static async Task<T> WithCopyAsync<T>(string path, Func<string, Task<T>> check, CancellationToken cancel)
    {
        if (!File.Exists(path + "-wal") || File.Exists(path + "-shm"))
        {
            return await check(path);
        }

        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-verify-");
        try
        {
            string copy = Path.Combine(folder.FullName, "shop.db");
            foreach (string ending in (string[])["", "-wal"])
            {
                await using FileStream from = new(path + ending, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
                await using FileStream to = new(copy + ending, FileMode.CreateNew);
                await from.CopyToAsync(to, cancel);
            }

            return await check(copy);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<ShopCheck> CheckAsync(string path, string readable, CancellationToken cancel)
    {
        long log = WriteAheadLog.BytesBeside(path);
        (ShopContents? contents, List<ShopFinding> findings) = await ReadAsync(readable, alone: log == 0, cancel);
        if (await ShopFile.HasForeignLogAsync(readable, findings.Count > 0, cancel))
        {
            (ShopContents? without, List<ShopFinding> rest) = await ReadAsync(readable, alone: true, cancel);
            (string what, string toDo) = WriteAheadLog.Words(path);
            return new ShopCheck(path, without, log, [new ShopFinding(what, toDo), .. rest]);
        }

        return new ShopCheck(path, contents, log, findings);
    }

    private static async Task<(ShopContents? Contents, List<ShopFinding> Findings)> ReadAsync(
        string path,
        bool alone,
        CancellationToken cancel
    )
    {
        const string Keep = "keep the file as it is, and restore the newest backup beside it: coilwright restore BACKUP --to NEWFILE";
        List<ShopFinding> findings = [];
        try
        {
            await using ShopReader reader = await ShopReader.OpenAsync(path, alone, cancel);
            findings.AddRange((await reader.DamageAsync(cancel)).Select(line => new ShopFinding("damaged: " + line, Keep)));
            findings.AddRange(
                (await reader.LostLinksAsync(cancel)).Select(one => new ShopFinding(
                    FormattableString.Invariant($"{one.Rows} of the records in {one.Table} name a record that is not there"),
                    Keep
                ))
            );
            return (await reader.ContentsAsync(cancel), findings);
        }
        catch (SqliteException damage)
        {
            findings.Add(new ShopFinding("damaged: " + damage.Message, Keep));
            return (null, findings);
        }
    }
}
