using System.IO.Compression;

namespace Coilwright.Web.Tests;

/// <summary>A tablet on a weak network waits for the script of a page: all of it is small.</summary>
public sealed class ScriptSizeTests
{
    private const long MostBytes = 60 * 1024;

    [Fact]
    public async Task The_script_of_all_pages_takes_at_most_60_kilobytes_compressed()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        byte[] script = await shop.Client.GetByteArrayAsync(
            new Uri("/built/main.js", UriKind.Relative),
            TestContext.Current.CancellationToken
        );
        await using MemoryStream small = new();
        await using (GZipStream zip = new(small, CompressionLevel.Optimal, leaveOpen: true))
        {
            await zip.WriteAsync(script, TestContext.Current.CancellationToken);
        }

        Assert.InRange(small.Length, 1024, MostBytes);
    }
}
