using System.Globalization;
using Coilwright.Storage.Backups;
using Coilwright.Storage.Records;
using Coilwright.Storage.Sqlite;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.Batches;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Tests;

/// <summary>Backups of a shop that is in use, and what comes back from them.</summary>
public sealed class BackupTests
{
    private static readonly DateTimeOffset s_later = TempShop.Noon.AddDays(3);

    private static CancellationToken Cancel => TempShop.Cancel;

    public static TheoryData<int> OldVersions => [.. Enumerable.Range(1, ShopFile.SchemaVersion - 1)];

    [Fact]
    public async Task A_backup_taken_while_another_writes_holds_every_reading_confirmed_before_it_began()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await using ShopRecords other = await ShopFile.OpenAsync(temp.PathOfShop, Cancel);
        int confirmed = 0;
        using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        Task writing = Task.Run(
            async () =>
            {
                for (int n = 1; !stop.IsCancellationRequested; n++)
                {
                    await other.Readings.AddAsync([TempShop.Reading(batch, Tag(n))], Cancel);
                    Volatile.Write(ref confirmed, n);
                }
            },
            Cancel
        );
        for (int round = 1; round <= 3; round++)
        {
            await UntilAsync(() => writing.IsCompleted || Volatile.Read(ref confirmed) >= 20 * round);
            Assert.False(writing.IsCompleted, writing.Exception?.ToString());
            int before = Volatile.Read(ref confirmed);

            BackupFile backup = await TakeAsync(temp, TempShop.Noon.AddMinutes(round));

            int after = Volatile.Read(ref confirmed) + 1; // one may be on its way
            await using ShopRecords restored = await RestoredAsync(backup, temp.PathOf($"restored {round}.db"));
            string[] tags = [.. (await restored.Readings.OfBatchAsync(batch.Id, Cancel)).Select(reading => reading.Tag)];
            Assert.InRange(tags.Length, before, after);
            Assert.Equal(Enumerable.Range(1, tags.Length).Select(Tag), tags); // none left out, none half there
            Assert.Equal(tags.Length, backup.Manifest!.Shop.Rows["Readings"]);
        }

        await stop.CancelAsync();
        await writing;
        Assert.False(WriteAheadLog.IsForeign(temp.PathOfShop));
    }

    [Fact]
    public async Task What_is_restored_is_the_shop_that_was_backed_up_row_by_row()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch, typed: "6,30 k  ")], Cancel);
        string before = await ContentsAsync(temp.PathOfShop);

        BackupFile backup = await TakeAsync(temp, s_later);
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch, "C-002")], Cancel);
        await (await RestoredAsync(backup, temp.PathOf("restored.db"))).DisposeAsync();

        Assert.Equal(before, await ContentsAsync(temp.PathOf("restored.db")));
        Assert.NotEqual(before, await ContentsAsync(temp.PathOfShop));
        Assert.Equal("wal", await PragmaAsync(temp.PathOf("restored.db"), "journal_mode"));
    }

    [Fact]
    public async Task A_backup_says_what_it_holds_and_leaves_nothing_else_in_its_folder()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch)], Cancel);

        BackupFile backup = await TakeAsync(temp, s_later);

        Assert.Equal("shop-2026-03-05T120000Z.coilwright.zip", Path.GetFileName(backup.Path));
        Assert.Equal([backup.Path], Directory.GetFileSystemEntries(temp.PathOf("backups")));
        BackupManifest told = BackupArchive.ReadManifest(backup.Path);
        Assert.Equal(("test 1.0", s_later), (told.Program, told.TimeUtc));
        Assert.Equal(("Lantern Quay workshop", ShopFile.SchemaVersion), (told.Shop.Name, told.Shop.SchemaVersion));
        Assert.Equal((1, 1, 1, 0), (Rows(told, "Batches"), Rows(told, "Readings"), Rows(told, "Revisions"), Rows(told, "Pieces")));
        Assert.Equal(TempShop.Noon.AddTicks(1), told.Shop.NewestRecordUtc);
        Assert.True(backup.Bytes < told.Bytes / 2, $"{backup.Bytes} bytes of {told.Bytes}");
        Assert.Equal(backup.Path, Assert.Single(await temp.Shop.Backups.InFolderAsync(temp.PathOf("backups"), Cancel)).Path);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_held_shop_is_seen_as_open_when_nobody_has_asked_it_for_long(bool held)
    {
        await using TempShop temp = await TempShop.StartAsync();
        await temp.BatchAsync();
        await using IAsyncDisposable? hold = held ? await temp.Shop.Backups.HoldAsync(Cancel) : null;
        await using (SqliteConnection idle = new(ShopContextOptions.Working(temp.PathOfShop)))
        {
            SqliteConnection.ClearPool(idle); // what the pool does by itself after some minutes
        }

        Assert.Equal(held, File.Exists(temp.PathOfShop + "-wal")); // who closes the file as the last takes the log away
    }

    [Fact]
    public async Task Two_backups_of_one_second_both_stay()
    {
        await using TempShop temp = await TempShop.StartAsync();
        await TakeAsync(temp, s_later);
        await TakeAsync(temp, s_later);
        Assert.Equal(2, (await temp.Shop.Backups.InFolderAsync(temp.PathOf("backups"), Cancel)).Count);
    }

    [Fact]
    public async Task A_folder_that_cannot_be_written_is_said_in_words_and_nothing_is_left()
    {
        await using TempShop temp = await TempShop.StartAsync();
        await File.WriteAllTextAsync(temp.PathOf("backups"), "a file, not a folder", Cancel);
        BackupException refused = await Assert.ThrowsAsync<BackupException>(() => TakeAsync(temp, s_later));
        Assert.Contains("no backup could be written here", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_damaged_shop_gives_no_backup_that_looks_like_one()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([.. Enumerable.Range(1, 400).Select(n => TempShop.Reading(batch, Tag(n)))], Cancel);
        await temp.ReopenAsync();
        await ScribbleAsync(temp.PathOfShop, from: 0.6);

        await Assert.ThrowsAsync<BackupException>(() => TakeAsync(temp, s_later));

        Assert.Empty(Directory.GetFileSystemEntries(temp.PathOf("backups")));
    }

    [Fact]
    public async Task Only_backups_of_this_shop_are_listed()
    {
        await using TempShop temp = await TempShop.StartAsync();
        await using TempShop stranger = await TempShop.StartAsync();
        string folder = temp.PathOf("backups");
        BackupFile ours = await TakeAsync(temp, s_later);
        BackupFile theirs = await stranger.Shop.Backups.TakeAsync(folder, "test 1.0", s_later.AddDays(1), Cancel);
        File.Copy(ours.Path, Path.Combine(folder, "before the move.coilwright.zip")); // a person's own name for it
        await File.WriteAllTextAsync(Path.Combine(folder, "notes.txt"), "keep", Cancel);
        string broken = Path.Combine(folder, "shop-2026-01-01T120000Z.coilwright.zip");
        await File.WriteAllTextAsync(broken, "cut off", Cancel);

        IReadOnlyList<BackupFile> listed = await temp.Shop.Backups.InFolderAsync(folder, Cancel);

        Assert.NotEqual(ours.Path, theirs.Path);
        Assert.Equal([ours.Path, broken], listed.Select(one => one.Path));
        Assert.Contains("not a backup of a shop", listed[1].Complaint, StringComparison.Ordinal);
        Assert.Equal([], BackupRules.Surplus(listed, 1, ours.Path));
    }

    [Theory]
    [MemberData(nameof(OldVersions))]
    public async Task A_backup_of_an_older_version_is_restored_as_it_is_and_brought_up_to_date_when_opened(int version)
    {
        await using TempShop temp = await TempShop.StartAsync();
        string old = temp.PathOf("old.db"),
            target = temp.PathOf("restored.db");
        await OldShop.WriteAsync(version, old, Cancel);
        SqliteBackups backups = new(old, $"Data Source={old};Pooling=False");
        BackupFile backup = await backups.TakeAsync(temp.PathOf("backups"), "test 0.1", s_later, Cancel);
        Assert.Equal(version, backup.Manifest!.Shop.SchemaVersion);

        await ShopRestore.RunAsync(await ShopRestore.PlanAsync(backup.Path, target, Cancel), s_later, Cancel);

        Assert.Equal(version.ToString(CultureInfo.InvariantCulture), await PragmaAsync(target, "user_version"));
        Assert.Equal(await ContentsAsync(old), await ContentsAsync(target));
        await using ShopRecords shop = await ShopFile.OpenAsync(target, Cancel);
        Assert.Equal(2, (await shop.Batches.AllAsync(Cancel)).Count);
        Assert.Equal("wal", await PragmaAsync(target, "journal_mode"));
        Assert.Equal(ShopFile.SchemaVersion.ToString(CultureInfo.InvariantCulture), await PragmaAsync(target, "user_version"));
    }

    internal static Task<BackupFile> TakeAsync(TempShop temp, DateTimeOffset nowUtc) =>
        temp.Shop.Backups.TakeAsync(temp.PathOf("backups"), "test 1.0", nowUtc, Cancel);

    /// <summary>Every row of every table, in order, as text: two shops with the same are the same.</summary>
    internal static async Task<string> ContentsAsync(string path)
    {
        List<string> lines = [];
        await using SqliteConnection connection = new($"Data Source={path};Pooling=False;Mode=ReadOnly");
        await connection.OpenAsync(Cancel);
        foreach (string table in await RowsAsync(connection, "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name"))
        {
            lines.AddRange((await RowsAsync(connection, $"SELECT * FROM \"{table}\" ORDER BY rowid")).Select(row => $"{table}: {row}"));
        }

        Assert.True(lines.Count > 3);
        return string.Join('\n', lines);
    }

    internal static async Task ScribbleAsync(string path, double from)
    {
        await using FileStream file = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        file.Position = (long)(file.Length * from);
        await file.WriteAsync(Enumerable.Repeat((byte)0xA5, (int)(file.Length * 0.2)).ToArray(), Cancel);
    }

    private static async Task<ShopRecords> RestoredAsync(BackupFile backup, string target)
    {
        RestorePlan plan = await ShopRestore.PlanAsync(backup.Path, target, Cancel);
        Assert.Empty(await ShopRestore.RunAsync(plan, s_later, Cancel));
        return await ShopFile.OpenAsync(target, Cancel);
    }

    private static async Task<string[]> RowsAsync(SqliteConnection connection, string sql)
    {
        await using SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // constants and names of our own tables
        command.CommandText = sql;
#pragma warning restore CA2100
        await using SqliteDataReader reader = await command.ExecuteReaderAsync(Cancel);
        List<string> rows = [];
        while (await reader.ReadAsync(Cancel))
        {
            object[] values = new object[reader.FieldCount];
            reader.GetValues(values);
            rows.Add(string.Join('|', values.Select(value => Convert.ToString(value, CultureInfo.InvariantCulture))));
        }

        return [.. rows];
    }

    private static async Task<string> PragmaAsync(string path, string name)
    {
        await using SqliteConnection connection = new($"Data Source={path};Pooling=False;Mode=ReadOnly");
        await connection.OpenAsync(Cancel);
        return Assert.Single(await RowsAsync(connection, "PRAGMA " + name));
    }

    private static long Rows(BackupManifest manifest, string table) => manifest.Shop.Rows[table];

    private static string Tag(int n) => string.Create(CultureInfo.InvariantCulture, $"C-{n:000000}");

    private static async Task UntilAsync(Func<bool> there)
    {
        while (!there())
        {
            await Task.Delay(5, Cancel);
        }
    }
}
