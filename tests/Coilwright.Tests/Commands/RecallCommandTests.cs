using System.Net;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Web;
using Microsoft.AspNetCore.Builder;

namespace Coilwright.Tests.Commands;

/// <summary>A spool of the demo shop turned out bad: list, table and letters, by command and on the page alike.</summary>
public sealed class RecallCommandTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_spool_is_recalled_with_pieces_coils_and_a_letter_for_each_customer()
    {
        using TestFolder folder = new();
        string file = folder.PathOf("demo.db");
        CommandRun made = await CommandRun.Of("demo", "--no-serve", "--shop", file);
        Assert.True(made.Exit == 0, made.Error);

        string[] rows = (await CommandRun.Of("recall", "0117", "--csv", "--shop", file)).Output.TrimEnd().Split('\n');
        Assert.Equal("what,name,recipe,where it is,customer,used as", rows[0]);
        Assert.Contains(rows, row => row.StartsWith("piece,2647-001,Breakwater twin A,shipped", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.StartsWith("coil,H-12/H-001,Harbour bridge A,in no piece", StringComparison.Ordinal));

        // the lot of that spool is recalled as one list, with every spool of it
        string[] lot = (await CommandRun.Of("recall", "L-31", "--csv", "--shop", file)).Output.TrimEnd().Split('\n');
        Assert.Equal(rows.Order(StringComparer.Ordinal), lot.Order(StringComparer.Ordinal));

        CommandRun letter = await CommandRun.Of([
            "recall",
            "0117",
            "--letter",
            "k-031",
            "--html",
            "--reason",
            "The wire may break.",
            "--ask",
            "Send it back.",
            "--shop",
            file,
        ]);
        Assert.Equal(0, letter.Exit);
        Assert.Contains("2647-001", letter.Output, StringComparison.Ordinal);
        Assert.Contains("The wire may break.", letter.Output, StringComparison.Ordinal);
        Assert.All(["0117", "L-31", "AWG", "B-5", "2647-002", "K-044"], kept =>
            Assert.DoesNotContain(kept, letter.Output, StringComparison.Ordinal)
        );

        await SamePagesAsync(file, rows);
    }

    [Fact]
    public async Task What_is_not_there_is_named()
    {
        using TestFolder folder = new();
        string file = folder.PathOf("demo.db");
        Assert.Equal(0, (await CommandRun.Of("demo", "--no-serve", "--shop", file)).Exit);

        CommandRun nothing = await CommandRun.Of("recall", "no such spool", "--shop", file);
        Assert.Equal(1, nothing.Exit);
        Assert.Contains("Nothing in this shop is called", nothing.Output, StringComparison.Ordinal);

        CommandRun stranger = await CommandRun.Of("recall", "0117", "--letter", "K-999", "--html", "--shop", file);
        Assert.Equal(2, stranger.Exit);
        Assert.Contains("K-999 has nothing of it; allowed: K-031, K-044", stranger.Error, StringComparison.Ordinal);

        CommandRun kind = await CommandRun.Of("recall", "0117", "--kind", "basket", "--shop", file);
        Assert.Equal(2, kind.Exit);
        Assert.Contains("nothing of that name is a basket; allowed: spool", kind.Error, StringComparison.Ordinal);
    }

    private static async Task SamePagesAsync(string file, string[] rows)
    {
        await using ShopRecords records = await ShopFile.OpenAsync(file, Cancel);
        await using WebApplication app = WebHost.Build(["http://127.0.0.1:0"], records, TimeProvider.System);
        await app.StartAsync(Cancel);
        using HttpClient client = new() { BaseAddress = new Uri(app.Urls.Single()) };

        string found = await client.GetStringAsync(At("/find?code=L-31"), Cancel);
        Assert.Contains("href=\"/recall?code=L-31&amp;kind=spool-lot&amp;id=\"", found, StringComparison.Ordinal);
        string page = await client.GetStringAsync(At("/recall?code=L-31&kind=spool-lot&id=&reason=Thin&ask=Return"), Cancel);
        Assert.Contains("Letter to K-031 (Pell &amp; Daughter)", page, StringComparison.Ordinal);
        Assert.Contains("2647-001", page, StringComparison.Ordinal);

        string table = await client.GetStringAsync(At("/recall.csv?code=0117&kind=spool"), Cancel);
        Assert.Equal(rows, table.TrimEnd().Split('\n'));
        string list = await client.GetStringAsync(At("/recall/list?code=0117&kind=spool"), Cancel);
        Assert.Contains("H-12/H-001", list, StringComparison.Ordinal);
        string letter = await client.GetStringAsync(
            At("/recall/letter?code=0117&kind=spool&customer=K-031&reason=Thin&ask=Return"),
            Cancel
        );
        Assert.Contains("2647-001", letter, StringComparison.Ordinal);
        Assert.DoesNotContain("0117", letter, StringComparison.Ordinal);
        foreach (string missing in new[] { "/recall?code=nothing", "/recall/letter?code=0117&customer=K-999", "/recall/other?code=0117" })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(At(missing), Cancel)).StatusCode);
        }
    }

    private static Uri At(string address) => new(address, UriKind.Relative);
}
