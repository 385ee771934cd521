using System.Net;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>"What was it really?" on a coil's page lists the causes by their labels, records one, and says why it does not.</summary>
public sealed class CauseFoundFormTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_cause_is_chosen_by_its_label_and_stands_in_the_coils_history()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        string json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "harbour-bridge.json"), Cancel);
        RevisionRecord revision = await shop.ReleasedAsync(json);
        BatchRecord batch = await shop.PlantedAsync(revision, "H-1", "main");
        CoilEntry entry = new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = "C-001",
            Resistance = "6.40 k",
            Temperature = "20 °C",
        };
        Assert.Empty((await shop.Services.Winding.RecordCoilAsync(entry, Cancel)).Problems);
        string page = await shop.Client.GetStringAsync(new Uri($"/batches/{batch.Id}/coils/C-001", UriKind.Relative), Cancel);
        Assert.Contains("""<option value="high-resistance-joint">bad joint</option>""", page, StringComparison.Ordinal);

        Uri was = new($"/batches/{batch.Id}/coils/C-001/was", UriKind.Relative);
        using FormUrlEncodedContent nothing = KnownHostsTests.Form(("id", $"{Guid.NewGuid()}"), ("choice", ""));
        using HttpResponseMessage refused = await shop.Client.PostAsync(was, nothing, Cancel);
        Assert.Contains("what did it really have?", await refused.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);

        using FormUrlEncodedContent joint = KnownHostsTests.Form(("id", $"{Guid.NewGuid()}"), ("choice", "high-resistance-joint"));
        using HttpResponseMessage kept = await shop.Client.PostAsync(was, joint, Cancel);
        Assert.Equal(HttpStatusCode.OK, kept.StatusCode);
        Assert.Contains("C-001 really had bad joint", await kept.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }
}
