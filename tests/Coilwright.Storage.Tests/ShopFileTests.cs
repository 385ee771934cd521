#pragma warning disable CA2100 // every statement below is a constant of the tests
using Coilwright.Storage.Model;
using Coilwright.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Coilwright.Storage.Tests;

public sealed class ShopFileTests
{
    [Fact]
    public async Task A_new_shop_keeps_its_name_and_leaves_one_file_when_closed()
    {
        await using TempShop temp = await TempShop.StartAsync();
        Assert.Equal("Lantern Quay workshop", await temp.Shop.ShopNameAsync(TempShop.Cancel));

        await temp.Shop.DisposeAsync();

        Assert.Equal(["shop.db"], Directory.GetFiles(Path.GetDirectoryName(temp.PathOfShop)!).Select(path => Path.GetFileName(path)));
        Assert.Equal(
            "Lantern Quay workshop",
            await (await ShopFile.OpenAsync(temp.PathOfShop, TempShop.Cancel)).ShopNameAsync(TempShop.Cancel)
        );
    }

    [Theory]
    [InlineData("journal_mode", "wal")]
    [InlineData("synchronous", "2")] // FULL
    [InlineData("foreign_keys", "1")]
    [InlineData("busy_timeout", "20000")]
    [InlineData("application_id", "1131370354")]
    [InlineData("user_version", "11")]
    public async Task Every_connection_is_durable_and_holds_foreign_keys(string pragma, string expected)
    {
        await using TempShop temp = await TempShop.StartAsync();
        foreach (int _ in Enumerable.Range(0, 3)) // a pooled connection comes back with the same settings
        {
            await using ShopContext context = temp.Shop.Open();
            await context.Database.OpenConnectionAsync(TempShop.Cancel);
            await using System.Data.Common.DbCommand command = context.Database.GetDbConnection().CreateCommand();
            command.CommandText = "PRAGMA " + pragma;
            Assert.Equal(
                expected,
                Convert.ToString(await command.ExecuteScalarAsync(TempShop.Cancel), System.Globalization.CultureInfo.InvariantCulture)
            );
        }
    }

    [Fact]
    public async Task The_model_has_no_change_without_a_migration()
    {
        await using TempShop temp = await TempShop.StartAsync();
        await using ShopContext context = temp.Shop.Open();
        Assert.False(context.Database.HasPendingModelChanges());
        int migrations = context.Database.GetMigrations().Count();
        Assert.Equal(ShopFile.SchemaVersion, migrations);
        Assert.Empty(await context.Database.GetPendingMigrationsAsync(TempShop.Cancel));
    }

    [Fact]
    public void A_model_change_without_a_migration_is_seen()
    {
        DbContextOptions<ShopContext> options = new DbContextOptionsBuilder<ShopContext>()
            .UseSqlite("Data Source=:memory:")
            .ReplaceService<Microsoft.EntityFrameworkCore.Infrastructure.IModelCustomizer, Planted>()
            .Options;
        using ShopContext context = new(options);
        Assert.True(context.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task A_shop_is_never_made_over_a_file_that_is_there()
    {
        await using TempShop temp = await TempShop.StartAsync();
        byte[] before = await BytesAsync(temp.PathOfShop);
        ShopFileException refused = await Assert.ThrowsAsync<ShopFileException>(() =>
            ShopFile.CreateAsync(temp.PathOfShop, "Other", cancel: TempShop.Cancel)
        );
        Assert.Contains("already", refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, await BytesAsync(temp.PathOfShop));
    }

    [Theory]
    [InlineData("notes", "not a shop's file")]
    [InlineData("empty", "not a shop's file")]
    [InlineData("foreign", "another program")]
    [InlineData("newer", "newer")]
    [InlineData("cut", "damaged")]
    [InlineData("scribbled", "damaged")]
    public async Task What_is_no_sound_shop_is_refused_and_left_as_it_is(string damage, string said)
    {
        await using TempShop temp = await TempShop.StartAsync();
        await temp.BatchAsync();
        await temp.Shop.DisposeAsync();
        string path = temp.PathOf($"Joss's {damage} #1 50%.db"); // a name that means something in an address
        File.Copy(temp.PathOfShop, path);
        await DamageAsync(path, damage);
        byte[] before = await BytesAsync(path);
        string[] files = Directory.GetFiles(Path.GetDirectoryName(path)!);

        ShopFileException refused = await Assert.ThrowsAsync<ShopFileException>(() => ShopFile.OpenAsync(path, TempShop.Cancel));

        Assert.Contains(said, refused.Message, StringComparison.Ordinal);
        Assert.Contains(path, refused.Message, StringComparison.Ordinal);
        Assert.Equal(before, await BytesAsync(path));
        Assert.Equal(files.Order(StringComparer.Ordinal), Directory.GetFiles(Path.GetDirectoryName(path)!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_missing_shop_is_refused_and_not_made()
    {
        await using TempShop temp = await TempShop.StartAsync();
        string path = temp.PathOf("none.db");
        await Assert.ThrowsAsync<ShopFileException>(() => ShopFile.OpenAsync(path, TempShop.Cancel));
        Assert.False(File.Exists(path));
    }

    [Fact]
    public async Task A_shop_cut_off_in_the_middle_of_its_work_opens_with_all_that_was_confirmed()
    {
        await using TempShop temp = await TempShop.StartAsync();
        Workshop.Batches.BatchRecord batch = await temp.BatchAsync();
        await temp.Shop.Readings.AddAsync([TempShop.Reading(batch)], TempShop.Cancel);
        foreach (string end in (string[])["", "-wal"]) // what a power cut leaves: the file and its log, never folded together
        {
            File.Copy(temp.PathOfShop + end, temp.PathOf("cut off #2 50%.db" + end));
        }

        await using ShopRecords found = await ShopFile.OpenAsync(temp.PathOf("cut off #2 50%.db"), TempShop.Cancel);
        Assert.Equal("6.30 k", Assert.Single(await found.Readings.OfBatchAsync(batch.Id, TempShop.Cancel)).Typed);
    }

    private static async Task DamageAsync(string path, string damage)
    {
        switch (damage)
        {
            case "notes":
                await File.WriteAllTextAsync(
                    path,
                    string.Concat(Enumerable.Repeat("these are my notes, not a shop. ", 20)),
                    TempShop.Cancel
                );
                break;
            case "empty":
                await File.WriteAllBytesAsync(path, [], TempShop.Cancel);
                break;
            case "foreign":
                await ExecuteAsync(path, "PRAGMA application_id = 7");
                break;
            case "newer":
                await ExecuteAsync(path, "PRAGMA user_version = 99");
                break;
            case "cut":
                await using (FileStream file = new(path, FileMode.Open))
                {
                    file.SetLength(file.Length - 10_000);
                }

                break;
            default:
                await using (FileStream file = new(path, FileMode.Open))
                {
                    file.Position = 4096;
                    file.Write(Enumerable.Repeat((byte)0xA5, (int)(file.Length - 4096)).ToArray());
                }

                break;
        }
    }

    private static async Task ExecuteAsync(string path, string sql)
    {
        await using (SqliteConnection connection = new($"Data Source={path};Pooling=False"))
        {
            await connection.OpenAsync(TempShop.Cancel);
            await using SqliteCommand command = connection.CreateCommand();
            command.CommandText = sql;
            await command.ExecuteNonQueryAsync(TempShop.Cancel);
        }
    }

    private static Task<byte[]> BytesAsync(string path) => File.ReadAllBytesAsync(path, TempShop.Cancel);

    /// <summary>Adds a column nobody wrote a migration for.</summary>
    private sealed class Planted(Microsoft.EntityFrameworkCore.Infrastructure.ModelCustomizerDependencies dependencies)
        : Microsoft.EntityFrameworkCore.Infrastructure.RelationalModelCustomizer(dependencies)
    {
        public override void Customize(ModelBuilder modelBuilder, DbContext context)
        {
            base.Customize(modelBuilder, context);
            modelBuilder.Entity<Workshop.Batches.BatchRecord>().Property<string>("Colour");
        }
    }
}
