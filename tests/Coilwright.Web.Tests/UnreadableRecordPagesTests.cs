using System.Net;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>One record that cannot be shown takes no page with it.</summary>
public sealed class UnreadableRecordPagesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_batch_and_a_piece_on_a_recipe_that_is_refused_today_stand_marked_in_every_list()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        string json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "sandbar-wide.json"), Cancel);
        RevisionRecord good = await shop.ReleasedAsync(json);
        RevisionRecord bad = good with
        {
            RecipeId = Guid.NewGuid(),
            RecipeName = "Long screw",
            Json = json.Replace("\"AWG 42\"", "\"AWG 4200\"", StringComparison.Ordinal),
        };
        Assert.NotEqual(json, bad.Json);
        Assert.True(await shop.Records.Recipes.SaveRevisionAsync(bad, 0, Cancel));
        string coil = RecipeReader.Read(good.Json).Value!.Coils[0].Name;
        await shop.PlantedAsync(good, "H-12", coil);
        BatchRecord planted = await shop.PlantedAsync(bad, "PX", coil);
        await shop.Records.Pieces.AddAsync(
            new PieceRecord
            {
                Id = Guid.NewGuid(),
                Serial = "2647-001",
                RecipeId = bad.RecipeId,
                RevisionNumber = 1,
                Person = "Ines",
                TimeUtc = good.TimeUtc,
            },
            [],
            Cancel
        );

        foreach ((int at, string typed) in new[] { "6.21 k", "6.24 k", "6.19 k" }.Index())
        {
            await shop.Records.Readings.AddAsync(
                [
                    new ReadingRecord
                    {
                        Id = Guid.NewGuid(),
                        BatchId = planted.Id,
                        Tag = $"C-00{at + 1}",
                        Quantity = "dcResistance",
                        Typed = typed,
                        Unit = "Ω",
                        Si = 6200 + at,
                        TemperatureC = 20,
                        TimeUtc = good.TimeUtc,
                    },
                ],
                Cancel
            );
        }

        foreach (
            (string page, string marked) in new[]
            {
                ("/", "Batch PX"),
                ("/spools", "Batch PX"),
                ($"/assembly?recipe={good.RecipeId}", "Batch PX"),
                ("/pieces", "Piece 2647-001"),
                ("/", "Piece 2647-001"),
                ("/recipes", "Long screw"),
                ("/recipes", "Cannot be shown: revision A of Long screw"),
                ("/clocks", "Piece 2647-001"),
                ("/charts", "Batch PX"),
                ($"/charts?recipe={bad.RecipeId}", "Batch PX"),
                ("/sets", "Piece 2647-001"),
                ("/test", "Piece 2647-001"),
            }
        )
        {
            HttpResponseMessage answer = await shop.Client.GetAsync(new Uri(page, UriKind.Relative), Cancel);
            string text = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
            Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{page}: {answer.StatusCode}");
            Assert.Contains(marked, text, StringComparison.Ordinal);
            Assert.Contains("What to do: nothing entered is lost", text, StringComparison.Ordinal);
        }

        string today = WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri("/", UriKind.Relative), Cancel));
        Assert.Contains("H-12", today, StringComparison.Ordinal);
        Assert.Contains("does not pass the checks of a recipe any more", today, StringComparison.Ordinal);
        Assert.Contains("What to do: nothing entered is lost", today, StringComparison.Ordinal);
        HttpResponseMessage stored = await shop.Client.GetAsync(new Uri($"/batches/{planted.Id}", UriKind.Relative), Cancel);
        string batch = WebUtility.HtmlDecode(await stored.Content.ReadAsStringAsync(Cancel));
        Assert.All(["C-001", "6.21 k", "C-003", "6.19 k", "AWG 4200", $"href=\"/recipes/{bad.RecipeId}\""], word =>
            Assert.Contains(word, batch, StringComparison.Ordinal)
        );
        string recipe = WebUtility.HtmlDecode(
            await shop.Client.GetStringAsync(new Uri($"/recipes/{bad.RecipeId}", UriKind.Relative), Cancel)
        );
        Assert.Contains("AWG 4200", recipe, StringComparison.Ordinal); // where it can be mended
        RecipeOutcome mended = await shop.Services.Recipes.SaveAsync(
            bad.RecipeId,
            json.Replace("Sandbar wide", "Long screw", StringComparison.Ordinal),
            "gauge was mistyped",
            "Joss",
            1,
            Cancel
        );
        Assert.Equal("B", mended.Revision?.Letter);
        foreach (
            string own in new[]
            {
                $"/batches/{planted.Id}",
                $"/batches/{planted.Id}/enter",
                $"/batches/{planted.Id}/wind",
                "/pieces/2647-001",
            }
        )
        {
            HttpResponseMessage answer = await shop.Client.GetAsync(new Uri(own, UriKind.Relative), Cancel);
            Assert.True(answer.StatusCode == HttpStatusCode.UnprocessableEntity, $"{own}: {answer.StatusCode}");
            Assert.Contains("What to do", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }
    }
}
