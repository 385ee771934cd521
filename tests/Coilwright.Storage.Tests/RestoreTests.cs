using System.IO.Compression;
using Coilwright.Storage.Backups;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Backups;
using Coilwright.Workshop.Batches;

namespace Coilwright.Storage.Tests;

/// <summary>Restoring over what is there, from what is no good, and looking first.</summary>
public sealed class RestoreTests
{
    private static readonly DateTimeOffset s_later = TempShop.Noon.AddDays(3);

    private static CancellationToken Cancel => TempShop.Cancel;

    [Fact]
    public async Task Looking_first_writes_nothing_and_says_what_the_shop_has_more()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        BackupFile backup = await BackupTests.TakeAsync(temp, s_later);
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch), TempShop.Reading(batch, "C-002")], Cancel);
        await temp.Shop.DisposeAsync();
        string[] before = State(temp);

        RestorePlan plan = await ShopRestore.PlanAsync(backup.Path, temp.PathOfShop, Cancel);

        Assert.True(plan.IsTaken);
        Assert.True(plan.Present!.IsSameShop(plan.Manifest.Shop));
        Assert.Equal([("Readings", 2L)], plan.Present.Against(plan.Manifest.Shop));
        Assert.Equal(TempShop.Noon.AddTicks(1), plan.Present.NewestRecordUtc);
        Assert.Equal(before, State(temp));
    }

    [Fact]
    public async Task What_stands_at_the_target_is_put_aside_whole_and_still_opens()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        BackupFile backup = await BackupTests.TakeAsync(temp, s_later);
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch)], Cancel);
        await temp.Shop.DisposeAsync();

        RestorePlan plan = await ShopRestore.PlanAsync(backup.Path, temp.PathOfShop, Cancel);
        string aside = Assert.Single(await ShopRestore.RunAsync(plan, s_later, Cancel));

        Assert.Equal(temp.PathOfShop + ".put-aside-2026-03-05T120000Z", aside);
        await using (ShopRecords former = await ShopFile.OpenAsync(aside, Cancel))
        {
            Assert.Single(await former.Readings.OfBatchAsync(batch.Id, Cancel));
        }

        await using ShopRecords restored = await ShopFile.OpenAsync(temp.PathOfShop, Cancel);
        Assert.Empty(await restored.Readings.OfBatchAsync(batch.Id, Cancel));
    }

    [Fact]
    public async Task A_log_left_behind_goes_aside_with_its_file_so_that_it_spoils_nothing()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BatchRecord batch = await temp.BatchAsync();
        BackupFile backup = await BackupTests.TakeAsync(temp, s_later);
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch)], Cancel);
        string target = temp.PathOf("cut off.db");
        foreach (string ending in (string[])["", "-wal"]) // a power cut: the reading stands in the log alone
        {
            File.Copy(temp.PathOfShop + ending, target + ending);
        }

        RestorePlan plan = await ShopRestore.PlanAsync(backup.Path, target, Cancel);
        IReadOnlyList<string> aside = await ShopRestore.RunAsync(plan, s_later, Cancel);

        Assert.Equal([target + "-wal"], plan.Beside);
        Assert.Equal(1, plan.Present!.Rows["Readings"]);
        Assert.Equal(2, aside.Count);
        Assert.False(File.Exists(target + "-wal"));
        await using ShopRecords former = await ShopFile.OpenAsync(aside[0], Cancel);
        Assert.Single(await former.Readings.OfBatchAsync(batch.Id, Cancel));
        await using ShopRecords restored = await ShopFile.OpenAsync(target, Cancel);
        Assert.Empty(await restored.Readings.OfBatchAsync(batch.Id, Cancel));
    }

    [Fact]
    public async Task A_log_without_its_file_is_put_aside_too()
    {
        await using TempShop temp = await TempShop.StartAsync();
        BackupFile backup = await BackupTests.TakeAsync(temp, s_later);
        string target = temp.PathOf("gone.db");
        File.Copy(temp.PathOfShop + "-wal", target + "-wal");

        RestorePlan plan = await ShopRestore.PlanAsync(backup.Path, target, Cancel);
        IReadOnlyList<string> aside = await ShopRestore.RunAsync(plan, s_later, Cancel);

        Assert.False(plan.IsTaken);
        Assert.Equal([target + ".put-aside-2026-03-05T120000Z-wal"], aside);
        await using ShopRecords restored = await ShopFile.OpenAsync(target, Cancel);
        Assert.Equal("Lantern Quay workshop", await restored.ShopNameAsync(Cancel));
    }

    [Theory]
    [InlineData("notes", "not a backup of a shop")]
    [InlineData("empty", "not a backup of a shop")]
    [InlineData("other zip", "not a backup of a shop")]
    [InlineData("shop", "not a backup of a shop")]
    [InlineData("cut", "damaged")]
    [InlineData("scribbled", "damaged")]
    [InlineData("exchanged", "damaged")]
    [InlineData("newer", "newer Coilwright")]
    [InlineData("missing", "no such backup")]
    public async Task What_is_no_sound_backup_is_refused_in_words_and_nothing_is_written(string damage, string said)
    {
        await using TempShop temp = await TempShop.StartAsync();
        await temp.BatchAsync();
        string bad = await DamagedAsync(temp, await BackupTests.TakeAsync(temp, s_later), damage);
        await temp.Shop.DisposeAsync();
        string[] before = State(temp);

        BackupException refused = await Assert.ThrowsAsync<BackupException>(() =>
            ShopRestore.PlanAsync(bad, temp.PathOf("restored.db"), Cancel)
        );

        Assert.Contains(said, refused.Message, StringComparison.Ordinal);
        Assert.Contains(bad, refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, State(temp));
    }

    [Fact]
    public async Task A_backup_that_is_damaged_between_look_and_deed_leaves_all_as_it_was()
    {
        await using TempShop temp = await TempShop.StartAsync();
        await temp.BatchAsync();
        BackupFile backup = await BackupTests.TakeAsync(temp, s_later);
        await temp.Shop.DisposeAsync();
        RestorePlan plan = await ShopRestore.PlanAsync(backup.Path, temp.PathOfShop, Cancel);
        await BackupTests.ScribbleAsync(backup.Path, from: 0.5);
        string[] before = State(temp);

        await Assert.ThrowsAsync<BackupException>(() => ShopRestore.RunAsync(plan, s_later, Cancel));

        Assert.Equal(before, State(temp));
    }

    private static async Task<string> DamagedAsync(TempShop temp, BackupFile good, string damage)
    {
        string bad = temp.PathOf("bad.coilwright.zip");
        switch (damage)
        {
            case "missing":
                return bad;
            case "notes" or "empty":
                await File.WriteAllTextAsync(bad, damage == "empty" ? "" : "these are my notes", Cancel);
                return bad;
            case "shop":
                return temp.PathOfShop;
            case "other zip":
                await using (ZipArchive zip = await ZipFile.OpenAsync(bad, ZipArchiveMode.Create, Cancel))
                {
                    zip.CreateEntry("photo.jpg");
                }

                return bad;
            case "exchanged":
                await ReplaceAsync(good.Path, bad, "shop.db", bytes => [.. bytes[..^1], (byte)(bytes[^1] ^ 1)]);
                return bad;
            case "newer":
                await ReplaceAsync(good.Path, bad, "manifest.json", bytes =>
                    System.Text.Encoding.UTF8.GetBytes(
                        System
                            .Text.Encoding.UTF8.GetString(bytes)
                            .Replace(VersionLine(ShopFile.SchemaVersion), VersionLine(99), StringComparison.Ordinal)
                    )
                );
                return bad;
            default:
                File.Copy(good.Path, bad);
                if (damage == "cut")
                {
                    await using FileStream file = new(bad, FileMode.Open);
                    file.SetLength(file.Length * 2 / 3);
                }
                else
                {
                    await BackupTests.ScribbleAsync(bad, from: 0.5);
                }

                return bad;
        }
    }

    private static async Task ReplaceAsync(string good, string bad, string entry, Func<byte[], byte[]> change)
    {
        File.Copy(good, bad);
        await using ZipArchive zip = await ZipFile.OpenAsync(bad, ZipArchiveMode.Update, Cancel);
        using MemoryStream held = new();
        await using (Stream from = await zip.GetEntry(entry)!.OpenAsync(Cancel))
        {
            await from.CopyToAsync(held, Cancel);
        }

        zip.GetEntry(entry)!.Delete();
        await using Stream to = await zip.CreateEntry(entry).OpenAsync(Cancel);
        await to.WriteAsync(change(held.ToArray()), Cancel);
    }

    /// <summary>Every file of the test's folder with its length and time.</summary>
    private static string[] State(TempShop temp) =>
        [
            .. new DirectoryInfo(Path.GetDirectoryName(temp.PathOfShop)!)
                .EnumerateFileSystemInfos("*", SearchOption.AllDirectories)
                .Select(file => $"{file.FullName} {(file as FileInfo)?.Length} {(file as FileInfo)?.LastWriteTimeUtc.Ticks}")
                .Order(StringComparer.Ordinal),
        ];

    private static string VersionLine(int version) => FormattableString.Invariant($"\"schemaVersion\": {version}");
}
