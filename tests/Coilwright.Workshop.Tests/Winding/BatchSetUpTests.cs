using Coilwright.Workshop.Batches;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>The set-up of a batch is of its winder, spool, turns and room.</summary>
public sealed class BatchSetUpTests
{
    private const string Tested =
        """{ "format": "coilwright.machine/1", "name": "Winder 2", "kind": "hand-guided", "counter": { "turns": """
        + """100.6, "counted": 100 } }""";

    private static CancellationToken Cancel => WorkingShop.Cancel;

    [Fact]
    public async Task The_counter_stop_is_that_of_the_batch_s_own_winder()
    {
        await using WorkingShop shop = await ShopAsync();
        BatchRecord batch = await shop.BatchAsync();

        BatchSetUp set = (await SetUps(shop).FindAsync(batch.Id, null, null, Cancel))!;

        Assert.Equal(7952, set.Coil.CounterStop(set.SetUp.CounterCorrection)); // 8,000 ÷ 1.006 = 7,952.3
        Assert.Equal(
            ("H-12", 24, "C-001", "C-024", "0117"),
            (set.SetUp.Batch!.Name, set.SetUp.Batch.Coils, set.SetUp.Batch.FirstTag, set.SetUp.Batch.LastTag, set.SetUp.Batch.Spool)
        );
        Assert.Equal("C-001", set.Run.NextToBegin);
        Assert.False(set.SetUp.IsForNoWinder);
        Assert.Null(await SetUps(shop).FindAsync(Guid.NewGuid(), null, null, Cancel));
    }

    [Fact]
    public async Task A_winder_that_is_not_on_record_says_so()
    {
        await using WorkingShop shop = await ShopAsync();
        BatchSetUp set = (await SetUps(shop).FindAsync((await shop.BatchAsync()).Id, "Winder 9", null, Cancel))!;
        Assert.Contains("not on record", set.SetUp.CorrectionBasis, StringComparison.Ordinal);
    }

    /// <summary>
    /// 56.2 Ω of 10 m at 23.5 °C are 5.544 Ω/m at 20 °C; 40 turns fewer leave out the outermost, 0.5 % of the turns and a little more of
    /// the wire.
    /// </summary>
    [Fact]
    public async Task Turns_chosen_at_the_spool_and_the_spool_s_own_wire_are_in_it()
    {
        await using WorkingShop shop = await ShopAsync();
        BatchRecord batch = await shop.BatchAsync();
        BatchSetUp before = (await SetUps(shop).FindAsync(batch.Id, null, 23.5, Cancel))!;
        await shop.EnsureSpoolAsync("0117");
        Assert.Empty(await shop.Stock.MeasureAsync(Guid.NewGuid(), "0117", "10.00 m", "56.2", "23.5 C", "Mara", Cancel));
        Assert.Empty(
            await shop.Run.RecordEventAsync(
                BatchEventServiceTests.Said(batch, BatchEventKind.SpoolTaken) with
                {
                    Spool = "0117",
                    Choice = "hold-ohms",
                    Turns = "7960",
                },
                Cancel
            )
        );

        BatchSetUp after = (await SetUps(shop).FindAsync(batch.Id, null, 23.5, Cancel))!;

        Assert.Equal(7960, after.Coil.Turns);
        Assert.Equal(Math.Round(7960 / 1.006), after.Coil.CounterStop(after.SetUp.CounterCorrection));
        Assert.Equal(after.Run.Plan.WireM(7960), after.Coil.WireLength.Value, after.Coil.WireLength.Value * 1e-3);
        Assert.Equal(5.544 * after.Coil.WireLength.Value, after.Coil.At20C.Expected.Value, after.Coil.At20C.Expected.Value * 1e-3);
        Assert.NotEqual(before.Coil.At20C.Expected.Value, after.Coil.At20C.Expected.Value);
        Assert.Contains("5.544", after.SetUp.Batch!.SpoolWords, StringComparison.Ordinal);
    }

    private static async Task<WorkingShop> ShopAsync()
    {
        WorkingShop shop = await WorkingShop.StartAsync();
        Assert.Empty(await shop.Machines.KeepAsync(Guid.NewGuid(), Tested, "Mara", Cancel));
        return shop;
    }

    private static BatchSetUpService SetUps(WorkingShop shop) => new(shop.Records, shop.Run, shop.Machines, shop.Stock, shop.Clock);
}
