using System.Net;
using System.Net.Http.Json;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>"Undo" of a correction that took a reading away brings it back in force, once however often it is sent.</summary>
public sealed class UndoCorrectionTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_reading_before_holds_again(bool api)
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        BatchRecord batch = await CorrectedAsync(shop);
        string enter = WebUtility.HtmlDecode(
            await shop.Client.GetStringAsync(new Uri($"/batches/{batch.Id}/enter", UriKind.Relative), Cancel)
        );
        Assert.Contains("Undo the correction of C-001", enter, StringComparison.Ordinal);

        Guid undo = Guid.NewGuid();
        for (int sent = 0; sent < 2; sent++)
        {
            using FormUrlEncodedContent form = KnownHostsTests.Form(("id", $"{undo}"), ("person", "Mara"));
            using HttpResponseMessage answer = api
                ? await shop.Client.PostAsJsonAsync(
                    new Uri($"/api/batches/{batch.Id}/undo", UriKind.Relative),
                    new { id = undo, person = "Mara" },
                    Cancel
                )
                : await shop.Client.PostAsync(new Uri($"/batches/{batch.Id}/undo", UriKind.Relative), form, Cancel);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        BatchStatus standing = (await shop.Services.Winding.StatusAsync(batch.Id, Cancel))!;
        Assert.Equal(["C-001", "C-002"], standing.Coils.Select(coil => coil.Tag));
        Assert.Equal(["2.41 H", "6.18 k"], standing.Coils[0].InForce.Select(reading => reading.Typed).Order(StringComparer.Ordinal));
    }

    /// <summary>Two coils; the inductance of the first was taken away by a correction.</summary>
    private static async Task<BatchRecord> CorrectedAsync(PagesOfShop shop)
    {
        string json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "harbour-bridge.json"), Cancel);
        RevisionRecord revision = await shop.ReleasedAsync(json);
        BatchRecord batch = await shop.PlantedAsync(revision, "H-1", "main");
        foreach ((string tag, string henry) in new[] { ("C-001", "2.41 H"), ("C-002", "") })
        {
            Assert.Empty(
                (
                    await shop.Services.Winding.RecordCoilAsync(
                        new CoilEntry
                        {
                            Id = Guid.NewGuid(),
                            BatchId = batch.Id,
                            Tag = tag,
                            Resistance = "6.18 k",
                            Temperature = "20 °C",
                            Inductance = henry,
                        },
                        Cancel
                    )
                ).Problems
            );
        }

        CoilDossier coil = (await shop.Services.Winding.StatusAsync(batch.Id, Cancel))!.Coils[0];
        CoilCorrection correction = new()
        {
            Id = Guid.NewGuid(),
            BatchId = batch.Id,
            Tag = "C-001",
            Readings =
            [
                .. coil
                    .InForce.Select(ReadingAsWritten.Of)
                    .Select(written => written.Value == "2.41 H" ? written with { Value = "" } : written),
            ],
            Reason = "of another coil",
        };
        Assert.Empty((await shop.Services.Winding.CorrectCoilAsync(correction, Cancel)).Problems);
        return batch;
    }
}
