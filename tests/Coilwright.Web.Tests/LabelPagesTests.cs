using System.Net;
using Coilwright.Workshop.Stock;

namespace Coilwright.Web.Tests;

/// <summary>Labels of a label printer by the pages: shown, as PDF, for the browser to print, and refused with what may be.</summary>
public sealed class LabelPagesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_label_is_shown_in_its_size_and_handed_over_as_pdf_and_document()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        Assert.True(
            await shop.Records.Stock.AddSpoolAsync(
                new SpoolRecord
                {
                    Id = Guid.NewGuid(),
                    Label = "0117",
                    Gauge = "AWG 42",
                    Insulation = "plain-enamel",
                    Build = "single",
                    TimeUtc = DateTimeOffset.UnixEpoch,
                },
                Cancel
            )
        );

        string page = await TextAsync(shop, "/labels?kind=spool&name=0117&size=50x25", HttpStatusCode.OK);
        Assert.Contains("width=\"50mm\" height=\"25mm\"", page, StringComparison.Ordinal);
        Assert.Contains(">Spool 0117</text>", page, StringComparison.Ordinal);
        using HttpResponseMessage pdf = await GetAsync(shop, "/labels.pdf?kind=spool&name=0117&own=57x32");
        Assert.Equal("application/pdf", pdf.Content.Headers.ContentType!.MediaType);
        string document = await TextAsync(shop, "/labels.html?kind=spool&name=0117&own=57x32", HttpStatusCode.OK);
        Assert.Contains("@page { size: 57mm 32mm; margin: 0; }", document, StringComparison.Ordinal);
        Assert.Contains("kind=spool&amp;name=0117", await TextAsync(shop, "/spools", HttpStatusCode.OK), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_mistake_is_named_at_once_and_what_was_typed_stays()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();

        string page = await TextAsync(shop, "/labels.pdf?kind=spool&name=0999&own=huge", HttpStatusCode.UnprocessableEntity);

        Assert.Contains("no such spool", page, StringComparison.Ordinal);
        Assert.Contains("20 to 150 mm", page, StringComparison.Ordinal);
        Assert.Contains("value=\"0999\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"huge\"", page, StringComparison.Ordinal);
    }

    private static Task<HttpResponseMessage> GetAsync(PagesOfShop shop, string address) =>
        shop.Client.GetAsync(new Uri(address, UriKind.Relative), Cancel);

    private static async Task<string> TextAsync(PagesOfShop shop, string address, HttpStatusCode expected)
    {
        using HttpResponseMessage answer = await GetAsync(shop, address);
        Assert.Equal(expected, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Cancel);
    }
}
