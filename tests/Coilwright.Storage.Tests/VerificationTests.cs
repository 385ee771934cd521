#pragma warning disable CA2100 // every statement below is a constant of the tests
using Coilwright.Storage.Backups;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.Batches;
using Microsoft.Data.Sqlite;

namespace Coilwright.Storage.Tests;

/// <summary>Whether a shop's file can be trusted, and above all whose log lies beside it.</summary>
public sealed class VerificationTests
{
    private static CancellationToken Cancel => TempShop.Cancel;

    [Fact]
    public async Task A_sound_shop_is_told_with_its_numbers_while_it_is_served()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch)], Cancel);

        ShopCheck check = await ShopVerification.CheckAsync(temp.PathOfShop, Cancel);

        Assert.True(check.IsSound);
        Assert.True(check.LogBytes > 0);
        Assert.Equal(1, check.Contents!.Rows["Readings"]);
        Assert.Equal((ShopFile.SchemaVersion, "Lantern Quay workshop"), (check.Contents.SchemaVersion, check.Contents.Name));
    }

    [Fact]
    public async Task An_older_shop_is_checked_and_stays_as_it_is()
    {
        await using TempShop temp = await TempShop.StartAsync();
        string old = temp.PathOf("old.db");
        await OldShop.WriteAsync(3, old, Cancel);
        byte[] before = await File.ReadAllBytesAsync(old, Cancel);

        ShopCheck check = await ShopVerification.CheckAsync(old, Cancel);

        Assert.True(check.IsSound);
        Assert.Equal(3, check.Contents!.SchemaVersion);
        Assert.Equal(before, await File.ReadAllBytesAsync(old, Cancel));
    }

    [Fact]
    public async Task A_shop_cut_off_by_a_power_cut_is_sound_with_its_log_and_nothing_is_written()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch)], Cancel);
        string path = temp.PathOf("cut off.db");
        await CopyAsync(temp.PathOfShop, path, "", "-wal");
        string[] files = Directory.GetFiles(Path.GetDirectoryName(path)!);

        ShopCheck check = await ShopVerification.CheckAsync(path, Cancel);

        Assert.True(check.IsSound);
        Assert.Equal(1, check.Contents!.Rows["Readings"]);
        Assert.Equal(files.Order(StringComparer.Ordinal), Directory.GetFiles(Path.GetDirectoryName(path)!).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_log_left_beside_another_file_is_named_for_what_it_is(bool fileIsNewer)
    {
        await using TempShop temp = await TempShop.StartAsync();
        string path = temp.PathOf("put over.db");
        await MixAsync(temp, path, fileIsNewer);

        ShopCheck check = await ShopVerification.CheckAsync(path, Cancel);
        ShopFileException refused = await Assert.ThrowsAsync<ShopFileException>(() => ShopFile.OpenAsync(path, Cancel));

        ShopFinding finding = Assert.Single(check.Findings);
        Assert.Contains($"{path}-wal) does not belong to this file", finding.What, StringComparison.Ordinal);
        Assert.Contains($"move {path}-wal", finding.ToDo, StringComparison.Ordinal);
        Assert.Contains("does not belong to this file", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("damaged", refused.Message, StringComparison.Ordinal);

        foreach (string ending in WriteAheadLog.Endings) // the cure works
        {
            File.Delete(path + ending);
        }

        Assert.True((await ShopVerification.CheckAsync(path, Cancel)).IsSound);
        await using ShopRecords shop = await ShopFile.OpenAsync(path, Cancel);
        Assert.Equal("Lantern Quay workshop", await shop.ShopNameAsync(Cancel));
    }

    [Fact]
    public async Task The_log_of_another_shop_is_no_part_of_this_one()
    {
        await using TempShop temp = await TempShop.StartAsync();
        await using TempShop other = await TempShop.StartAsync();
        BatchRecord batch = await other.BatchAsync();
        await other.Shop.Readings.AddAsync([.. Enumerable.Range(1, 400).Select(n => TempShop.Reading(batch, $"D-{n}"))], Cancel);
        await ExecuteAsync(other.PathOfShop, "PRAGMA wal_checkpoint(TRUNCATE)");
        await other.Shop.Readings.AddAsync([.. Enumerable.Range(1, 400).Select(n => TempShop.Reading(batch, $"E-{n}"))], Cancel);
        await temp.Shop.DisposeAsync();
        string path = temp.PathOf("put over.db");
        await CopyAsync(temp.PathOfShop, path, "");
        File.Copy(other.PathOfShop + "-wal", path + "-wal");

        ShopCheck check = await ShopVerification.CheckAsync(path, Cancel);

        Assert.Contains("does not belong to this file", Assert.Single(check.Findings).What, StringComparison.Ordinal);
        Assert.Equal(0, check.Contents!.Rows["Batches"]);
    }

    /// <summary>Two programs write and fold the log into the file at every turn: their own log is never called another's.</summary>
    [Fact]
    public async Task A_log_at_work_is_never_called_foreign()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await using ShopRecords second = await ShopFile.OpenAsync(temp.PathOfShop, Cancel);
        Random turns = new(7);
        for (int n = 0; n < 60; n++)
        {
            await (turns.Next(2) == 0 ? temp.Shop : second).Readings.AddAsync(
                [.. Enumerable.Range(0, turns.Next(1, 30)).Select(m => TempShop.Reading(batch, $"C-{n}-{m}"))],
                Cancel
            );
            if (turns.Next(6) == 0)
            {
                await ExecuteAsync(
                    temp.PathOfShop,
                    turns.Next(2) == 0 ? "PRAGMA wal_checkpoint(PASSIVE)" : "PRAGMA wal_checkpoint(TRUNCATE)"
                );
            }

            Assert.False(WriteAheadLog.IsForeign(temp.PathOfShop), $"turn {n}");
        }
    }

    [Fact]
    public async Task Damage_and_lost_links_are_found()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([.. Enumerable.Range(1, 400).Select(n => TempShop.Reading(batch, $"C-{n}"))], Cancel);
        await temp.Shop.DisposeAsync();
        await ExecuteAsync(temp.PathOfShop, "PRAGMA foreign_keys = OFF; DROP TRIGGER Batches_no_delete; DELETE FROM Batches");
        ShopFinding lost = Assert.Single((await ShopVerification.CheckAsync(temp.PathOfShop, Cancel)).Findings);
        Assert.Contains("400 of the records in Readings", lost.What, StringComparison.Ordinal);

        await BackupTests.ScribbleAsync(temp.PathOfShop, from: 0.6);
        ShopCheck check = await ShopVerification.CheckAsync(temp.PathOfShop, Cancel);
        Assert.Contains(check.Findings, finding => finding.What.StartsWith("damaged: ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("/home/mara/shop.db", "/home")]
    [InlineData("/home/mara/backups/", "/home")]
    [InlineData("/homework/shop.db", "/")]
    [InlineData("/media/stick", "/media/stick")]
    [InlineData("/media/stick/backups", "/media/stick")]
    public void The_longest_mount_point_holds_a_path(string path, string volume) =>
        Assert.Equal(volume, Volumes.Of(path, ["/", "/home", "/media/stick", "/media"]));

    /// <summary>A file with the log of an earlier or a later state of itself.</summary>
    private static async Task MixAsync(TempShop temp, string path, bool fileIsNewer)
    {
        BatchRecord batch = await temp.BatchAsync();
        string early = temp.PathOf("early.db"),
            late = temp.PathOf("late.db");
        await temp.Shop.Readings.AddAsync([.. Enumerable.Range(1, 40).Select(n => TempShop.Reading(batch, $"C-{n}"))], Cancel);
        await CopyAsync(temp.PathOfShop, early, "", "-wal");
        for (int n = 1; n <= 20; n++)
        {
            await ExecuteAsync(temp.PathOfShop, "PRAGMA wal_checkpoint(TRUNCATE)");
            await temp.Shop.Readings.AddAsync([.. Enumerable.Range(1, 40).Select(m => TempShop.Reading(batch, $"D-{n}-{m}"))], Cancel);
        }

        await CopyAsync(temp.PathOfShop, late, "-wal");
        await ExecuteAsync(temp.PathOfShop, "PRAGMA wal_checkpoint(TRUNCATE)");
        await CopyAsync(temp.PathOfShop, late, "");
        File.Copy(fileIsNewer ? late : early, path);
        File.Copy((fileIsNewer ? early : late) + "-wal", path + "-wal");
    }

    private static async Task CopyAsync(string from, string to, params string[] endings)
    {
        foreach (string ending in endings)
        {
            await File.WriteAllBytesAsync(to + ending, await File.ReadAllBytesAsync(from + ending, Cancel), Cancel);
        }
    }

    private static async Task ExecuteAsync(string path, string sql)
    {
        await using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        await connection.OpenAsync(Cancel);
        await using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync(Cancel);
    }
}
