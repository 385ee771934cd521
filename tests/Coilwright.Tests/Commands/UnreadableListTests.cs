using System.Text.Json;
using Coilwright.Storage;
using Coilwright.Storage.Records;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Tests.Commands;

/// <summary>A record that cannot be shown keeps its place in every list, with why and what to do.</summary>
public sealed class UnreadableListTests
{
    private static readonly string s_harbour = RepositoryFiles.PathOf("demo", "recipes", "harbour-bridge.json");

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Batch_list_as_json_gives_it_a_place_and_keeps_to_its_schema()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await CommandRun.Of("recipe", "add", s_harbour, "--shop", shop);
        await CommandRun.Of("recipe", "release", "Harbour bridge", "--shop", shop);
        await CommandRun.Of("batch", "start", "Harbour bridge", "--name", "H-1", "--quantity", "3", "--shop", shop);
        BatchRecord planted = await PlantAsync(shop);

        CommandRun list = await CommandRun.Of("batch", "list", "--json", "--shop", shop);
        Assert.Equal(0, list.Exit);
        Assert.Empty(Schemas.Complaints("batches.json", list.Output));
        using JsonDocument document = JsonDocument.Parse(list.Output);
        JsonElement[] batches = [.. document.RootElement.GetProperty("batches").EnumerateArray()];
        Assert.Equal(["H-1", "PX"], batches.Select(one => one.GetProperty("batch").GetString()));
        Assert.Equal(planted.Id, batches[1].GetProperty("id").GetGuid());
        Assert.Contains("coil 1, winding, turns", batches[1].GetProperty("unreadable").GetString(), StringComparison.Ordinal);
        Assert.Contains("next revision", batches[1].GetProperty("toDo").GetString(), StringComparison.Ordinal);
        Assert.Contains("Batch PX cannot be shown", list.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Batch_show_gives_what_was_entered_and_says_what_is_wrong_with_the_recipe()
    {
        using TestFolder folder = new();
        string file = folder.PathOf("shop.db");
        await CommandRun.Of("recipe", "add", s_harbour, "--shop", file);
        BatchRecord planted = await PlantAsync(file);
        await using (ShopRecords shop = await ShopFile.OpenAsync(file, Cancel))
        {
            await shop.Readings.AddAsync(
                [
                    new ReadingRecord
                    {
                        Id = Guid.NewGuid(),
                        BatchId = planted.Id,
                        Tag = "C-001",
                        Quantity = "dcResistance",
                        Typed = "6.21 k",
                        Unit = "Ω",
                        Si = 6210,
                        TemperatureC = 20,
                        TimeUtc = planted.BegunUtc,
                    },
                ],
                Cancel
            );
        }

        CommandRun show = await CommandRun.Of("batch", "show", "PX", "--shop", file);
        Assert.Equal(2, show.Exit);
        Assert.All(["C-001", "6.21 k"], word => Assert.Contains(word, show.Output, StringComparison.Ordinal));
        Assert.Contains(
            "coil 1, winding, turns, stored as 0: outside what is possible here (allowed: 1 to 100000)",
            show.Error,
            StringComparison.Ordinal
        );
        Assert.Contains("mend the value, save it as the next revision", show.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Piece P-1 cannot be shown", "clocks")]
    [InlineData("Piece P-1 cannot be shown", "set", "list")]
    [InlineData("Long screw, revision A cannot be shown", "recipe", "list")]
    public async Task Other_lists_tell_it_beside_themselves(string told, params string[] args)
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await CommandRun.Of("recipe", "add", s_harbour, "--shop", shop);
        await PlantAsync(shop);
        CommandRun list = await CommandRun.Of([.. args, "--shop", shop]);
        Assert.Equal(0, list.Exit);
        Assert.Contains(told, list.Error, StringComparison.Ordinal);
        Assert.Contains("What to do: ", list.Error, StringComparison.Ordinal);
    }

    /// <summary>A batch and a piece on a released recipe of no turns, written past the checks.</summary>
    private static async Task<BatchRecord> PlantAsync(string file)
    {
        string json = (await File.ReadAllTextAsync(s_harbour, Cancel))
            .Replace("\"turns\": 8000", "\"turns\": 0", StringComparison.Ordinal)
            .Replace("\"name\": \"Harbour bridge\"", "\"name\": \"Long screw\"", StringComparison.Ordinal);
        RevisionRecord revision = new(
            Guid.NewGuid(),
            "Long screw",
            1,
            json,
            RevisionState.Released,
            "",
            "Joss",
            TimeProvider.System.GetUtcNow()
        );
        BatchRecord batch = new(Guid.NewGuid(), "PX", revision.RecipeId, 1, "main", 4, "C-", "", "", "Mara", revision.TimeUtc);
        await using ShopRecords shop = await ShopFile.OpenAsync(file, Cancel);
        Assert.True(await shop.Recipes.SaveRevisionAsync(revision, 0, Cancel));
        await shop.Batches.AddAsync(batch, Cancel);
        await shop.Pieces.AddAsync(
            new PieceRecord
            {
                Id = Guid.NewGuid(),
                Serial = "P-1",
                RecipeId = revision.RecipeId,
                RevisionNumber = 1,
                Person = "Ines",
                TimeUtc = revision.TimeUtc,
            },
            [],
            Cancel
        );
        return batch;
    }
}
