#pragma warning disable CA2100 // every statement below is a constant of the tests
using Coilwright.Workshop.Batches.Summaries;
using Microsoft.Data.Sqlite;

namespace Coilwright.Application.Tests.Backups;

/// <summary>What follows from a shop's records is held against them, named where it is wrong, and made again when asked.</summary>
public sealed class VerifyShopTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Missing_summaries_are_a_note_and_made_ones_are_compared_without_a_byte_written()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        await ExecuteAsync(shop, "DELETE FROM BatchSummaries; PRAGMA wal_checkpoint(TRUNCATE)");
        (int exit, string output, string error) = await DemoShop.RunAsync("verify", "--shop", shop.File);
        Assert.True(exit == 0, output + error);
        Assert.Contains("have no summary yet", output, StringComparison.Ordinal);
        Assert.Contains("H-12", output, StringComparison.Ordinal);

        (exit, output, _) = await DemoShop.RunAsync("verify", "--repair", "--shop", shop.File);
        Assert.Equal(0, exit);
        Assert.Contains("Repair: summary of batch H-12: made, it was missing", output, StringComparison.Ordinal);
        int batches = (await shop.Opened.Records.Batches.AllAsync(Cancel)).Count;
        await ExecuteAsync(shop, "PRAGMA wal_checkpoint(TRUNCATE)");
        byte[] before = await ReadAsync(shop.File);
        (exit, output, _) = await DemoShop.RunAsync("verify", "--shop", shop.File);
        Assert.Equal(0, exit);
        Assert.Contains(FormattableString.Invariant($"held against their records: {batches}."), output, StringComparison.Ordinal);
        Assert.DoesNotContain("Note:", output, StringComparison.Ordinal);
        Assert.Equal(before, await ReadAsync(shop.File));
    }

    [Theory]
    [InlineData("""UPDATE BatchSummaries SET Json = replace(Json, '"begun":', '"begun":1') WHERE BatchId = $H""", "number of coils")]
    [InlineData("""UPDATE BatchSummaries SET Json = replace(Json, '"nextTag":"', '"nextTag":"X') WHERE BatchId = $H""", "next tag")]
    [InlineData("""UPDATE BatchSummaries SET Json = replace(Json, '"pass":', '"pass":1') WHERE BatchId = $H""", "coils judged")]
    [InlineData("""UPDATE BatchSummaries SET Json = replace(Json, '"coils":', '"coils":1') WHERE BatchId = $H""", "wire taken")]
    [InlineData("UPDATE BatchSummaries SET Hold = Hold + 1 WHERE BatchId = $H", "not what it says")]
    [InlineData("UPDATE BatchSummaries SET Json = '{' WHERE BatchId = $H", "cannot be read")]
    public async Task A_summary_that_says_other_than_its_records_is_named_and_made_again(string spoil, string what)
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        await shop.Opened.Services.Summaries.CatchUpAsync(int.MaxValue, Cancel);
        string records = await RecordsAsync(shop);
        await ExecuteAsync(shop, spoil.Replace("$H", "(SELECT Id FROM Batches WHERE Name = 'H-12')", StringComparison.Ordinal));

        (int exit, string output, _) = await DemoShop.RunAsync("verify", "--shop", shop.File);
        Assert.Equal(1, exit);
        string line = Assert.Single(output.Split('\n'), one => one.StartsWith("NOT SOUND", StringComparison.Ordinal));
        Assert.Contains("batch H-12", line, StringComparison.Ordinal);
        Assert.Contains(what, line, StringComparison.Ordinal);

        (exit, output, _) = await DemoShop.RunAsync("verify", "--repair", "--shop", shop.File);
        Assert.Equal(0, exit);
        Assert.Contains("Repair: summary of batch H-12: made again", output, StringComparison.Ordinal);
        Assert.Equal(records, await RecordsAsync(shop));
        (exit, output, _) = await DemoShop.RunAsync("verify", "--repair", "--shop", shop.File);
        Assert.Equal(0, exit);
        Assert.Contains("Repair: nothing had to be made again", output, StringComparison.Ordinal);
    }

    /// <summary>
    /// Verdicts follow from causes found anywhere in the shop: a summary made before the last of them tells those of its day.</summary>
    [Theory]
    [InlineData(false, 1)]
    [InlineData(true, 0)]
    public async Task Verdicts_alone_may_be_those_of_their_day_but_only_when_a_cause_was_found_since(bool found, int expected)
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        if (found)
        {
            (int said, _, string error) = await DemoShop.RunAsync("read", "H-12", "--tag", "H-001", "--was", "none", "--shop", shop.File);
            Assert.True(said == 0, error);
        }

        await shop.Opened.Services.Summaries.CatchUpAsync(int.MaxValue, Cancel);
        BatchSummary thin = await SummaryAsync(shop, "S-4");
        await ExecuteAsync(
            shop,
            FormattableString.Invariant(
                $$"""
                UPDATE BatchSummaries SET Json = json_set(Json, '$.pass', {{thin.Pass + 1}}, '$.reject', {{thin.Reject - 1}})
                WHERE BatchId = (SELECT Id FROM Batches WHERE Name = 'S-4')
                """
            )
        );
        Assert.True(thin.Reject > 0);
        (int exit, string output, _) = await DemoShop.RunAsync("verify", "--shop", shop.File);
        Assert.Equal(expected, exit);
        Assert.Contains(found ? "have the verdicts of their day" : "NOT SOUND: the summary of batch S-4", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_of_pieces_in_the_shop_is_held_against_their_events()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        int before = (await shop.Opened.Records.Pieces.InShopAsync(Cancel)).Count;
        Assert.True(before > 0);
        await ExecuteAsync(
            shop,
            "DELETE FROM OpenPieces; INSERT INTO OpenPieces SELECT PieceId FROM PieceEvents WHERE Kind = 'Shipped' LIMIT 1"
        );
        (int exit, string output, _) = await DemoShop.RunAsync("verify", "--shop", shop.File);
        Assert.Equal(1, exit);
        Assert.Contains("the list of pieces in the shop is wrong about", output, StringComparison.Ordinal);
        Assert.Equal(0, (await DemoShop.RunAsync("verify", "--repair", "--shop", shop.File)).Exit);
        Assert.Equal(before, (await shop.Opened.Records.Pieces.InShopAsync(Cancel)).Count);
    }

    private static async Task<BatchSummary> SummaryAsync(DemoShop shop, string batch)
    {
        Guid id = (await shop.Opened.Records.Batches.AllAsync(Cancel)).Single(one => one.Name == batch).Id;
        return (await shop.Opened.Records.Summaries.AllAsync(Cancel))[id];
    }

    private static async Task<byte[]> ReadAsync(string path)
    {
        await using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        byte[] bytes = new byte[file.Length];
        await file.ReadExactlyAsync(bytes, Cancel);
        return bytes;
    }

    /// <summary>Every row of the records that a repair could be thought to touch.</summary>
    private static async Task<string> RecordsAsync(DemoShop shop)
    {
        await using SqliteConnection connection = await OpenAsync(shop);
        await using SqliteCommand command = new(
            "SELECT group_concat(x, ';') FROM (SELECT Id || Tag || Typed || TimeUtc AS x FROM Readings UNION ALL "
                + "SELECT Id || Kind || Payload FROM BatchEvents UNION ALL SELECT Id || Json FROM BatchLimits)",
            connection
        );
        return (string)(await command.ExecuteScalarAsync(Cancel))!;
    }

    private static async Task ExecuteAsync(DemoShop shop, string sql)
    {
        await using SqliteConnection connection = await OpenAsync(shop);
        await using SqliteCommand command = new(sql, connection);
        await command.ExecuteNonQueryAsync(Cancel);
    }

    private static async Task<SqliteConnection> OpenAsync(DemoShop shop)
    {
        SqliteConnection connection = new($"Data Source={shop.File};Pooling=False");
        await connection.OpenAsync(Cancel);
        return connection;
    }
}
