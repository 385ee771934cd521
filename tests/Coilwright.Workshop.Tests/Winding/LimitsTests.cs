using Coilwright.Workshop.Batches;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>Page, set-up sheet, verdict and chart hold a coil against the same limits.</summary>
public sealed class LimitsTests
{
    private static CancellationToken Cancel => WorkingShop.Cancel;

    /// <summary>6.18 kΩ ± 4 % at 25 °C is 6.18 / (1 + 0.00393 · 5) = 6.0609 kΩ at 20 °C: 5.8185 to 6.3034 kΩ.</summary>
    [Fact]
    public async Task A_target_stated_at_25_degrees_is_the_same_everywhere()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync(
            WorkingShop.Harbour(targets: """{ "dcResistance": { "nominal": "6.18 kΩ", "tolerance": "4 %", "temperature": "25 °C" } }""")
        );
        await SameAsync(shop, await shop.BatchAsync(revision), 5818.5, 6303.4);
    }

    /// <summary>Of a connection "single" the first coil is the pickup, and has its target.</summary>
    [Fact]
    public async Task Of_two_coils_in_single_connection_the_first_has_the_pickups_target()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        string json = await File.ReadAllTextAsync(RepositoryPath.Of("demo/recipes/breakwater-twin.json"), Cancel);
        System.Text.Json.Nodes.JsonObject recipe = System.Text.Json.Nodes.JsonNode.Parse(json)!.AsObject();
        recipe["connection"] = "single";
        recipe["targets"] = System.Text.Json.Nodes.JsonNode.Parse("""{ "dcResistance": { "nominal": "3.90 kΩ", "tolerance": "4 %" } }""");
        foreach (System.Text.Json.Nodes.JsonNode? coil in recipe["coils"]!.AsArray())
        {
            coil!.AsObject().Remove("targets");
        }

        RevisionRecord revision = await shop.ReleasedAsync(recipe.ToJsonString());
        string first = recipe["coils"]![0]!["name"]!.GetValue<string>();
        BatchRecord batch = new(
            Guid.NewGuid(),
            "H-12",
            revision.RecipeId,
            revision.Number,
            first,
            24,
            "C-",
            "",
            "",
            "Mara",
            shop.Clock.GetUtcNow()
        );
        Assert.Empty(await shop.Room.BeginBatchAsync(batch, Cancel));
        await SameAsync(shop, batch, 3744, 4056);
    }

    private static async Task SameAsync(WorkingShop shop, BatchRecord batch, double lowOhm, double highOhm)
    {
        string Kilo(double ohm) => FormattableString.Invariant($"{ohm / 1000:0.000} k");
        VerdictKind[] kinds =
        [
            (await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", Kilo(lowOhm * 0.995)))).Verdict.Kind,
            (await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", Kilo(lowOhm * 1.005)))).Verdict.Kind,
            (await shop.KeptAsync(WorkingShop.Entry(batch, "C-003", Kilo(highOhm * 0.995)))).Verdict.Kind,
            (await shop.KeptAsync(WorkingShop.Entry(batch, "C-004", Kilo(highOhm * 1.005)))).Verdict.Kind,
        ];
        Assert.Equal([VerdictKind.Reject, VerdictKind.Pass, VerdictKind.Pass, VerdictKind.Reject], kinds);

        BatchProgress run = (await shop.Run.StatusAsync(batch.Id, Cancel))!;
        ControlChart wall = (
            await new ControlChartService(shop.Records, shop.Machines, shop.Room.Dossiers).ShowAsync(new ChartSettingsForm(), Cancel)
        ).ControlChart!;
        Assert.True(run.Status.Limits.Resistance.IsTarget);
        foreach (
            (double low, double high) in new[]
            {
                (run.Status.Limits.Resistance.Low, run.Status.Limits.Resistance.High),
                (wall.Band!.Low, wall.Band.High),
                (run.Plan.SetUp.At20C.LowOhm!.Value, run.Plan.SetUp.At20C.HighOhm!.Value),
            }
        )
        {
            Assert.Equal(lowOhm, low, 0.1);
            Assert.Equal(highOhm, high, 0.1);
        }
    }
}
