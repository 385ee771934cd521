using System.Net;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Web.Tests;

/// <summary>A full disk and a file that may only be read are said in words; neither is the program's mistake.</summary>
public sealed class StorageFaultTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_full_disk_is_named_on_pages()
    {
        FullDisk disk = new();
        await using ServedShop shop = await ServedShop.StartAsync(disk);
        disk.IsFull = true;
        using FormUrlEncodedContent form = KnownHostsTests.Form(("room", "25"), ("person", "Mara"));
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/room", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.InsufficientStorage, answer.StatusCode);
        Assert.Contains("The disk is full: nothing was stored", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_shop_that_may_only_be_read_is_shown_and_takes_no_entry()
    {
        string file;
        string folder = Directory.CreateTempSubdirectory("coilwright-readonly-").FullName;
        try
        {
            file = Path.Combine(folder, "shop.db");
            await (await ShopFile.CreateAsync(file, "Lantern Quay workshop", cancel: Cancel)).DisposeAsync();
            File.SetAttributes(file, FileAttributes.ReadOnly);
            await using ShopRecords shop = await ShopFile.OpenAsync(file, Cancel);
            Assert.Equal("Lantern Quay workshop", await shop.ShopNameAsync(Cancel));
            Exception refused = await Assert.ThrowsAnyAsync<Exception>(() =>
                shop.Room.AddAsync(new(25, "25", "Mara", DateTimeOffset.UnixEpoch), Cancel)
            );
            Assert.False(StorageFault.Of(refused)!.DiskIsFull);
        }
        finally
        {
            File.SetAttributes(Path.Combine(folder, "shop.db"), FileAttributes.Normal);
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Other_failures_stay_ours() =>
        Assert.Null(StorageFault.Of(new DbUpdateException("", new SqliteException("constraint failed", 19))));

    /// <summary>Time that fails as the database does on a full disk, wherever it is asked for in an entry.</summary>
    private sealed class FullDisk : TimeProvider
    {
        private const int Full = 13;

        public bool IsFull { get; set; }

        public override DateTimeOffset GetUtcNow() =>
            IsFull ? throw new DbUpdateException("", new SqliteException("database or disk is full", Full)) : base.GetUtcNow();
    }
}
