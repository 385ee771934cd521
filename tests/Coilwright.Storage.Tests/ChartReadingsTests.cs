using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Readings;

namespace Coilwright.Storage.Tests;

/// <summary>
/// Readings for charts against the plain way: every reading of every batch, those in force, the last of each coil, by first entry.
/// </summary>
public class ChartReadingsTests
{
    private static CancellationToken Cancel => TempShop.Cancel;

    private protected virtual Task<TempShop> StartAsync() => TempShop.StartAsync();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task The_whole_run_is_what_the_plain_way_gives(int seed)
    {
        await using TempShop temp = await StartAsync();
        (BatchRecord[] batches, List<ReadingRecord> all) = await MixedAsync(temp, seed);
        ChartQuery query = new()
        {
            Batches = [.. batches.Select(batch => batch.Id)],
            Quantity = "dcResistance",
            Coils = 10_000,
        };

        (Guid, string, double)[] expected = Plainly(all);
        Assert.True(expected.Length > 80);
        Assert.Equal(expected, Short(await temp.Shop.Readings.ForChartAsync(query, Cancel)));
        Assert.Equal(expected, Short(await temp.Shop.Readings.ForChartAsync(query with { First = true }, Cancel)));
        Assert.Equal(
            expected.OrderBy(one => one.Item2).ThenBy(one => one.Item1),
            Short(await ((IChartRecords)new SlowStore(all)).ForChartAsync(query, Cancel)).OrderBy(one => one.Item2).ThenBy(one => one.Item1)
        );
    }

    [Fact]
    public async Task The_first_coils_are_the_beginning_of_the_run_and_the_last_its_end()
    {
        await using TempShop temp = await StartAsync();
        BatchRecord[] batches = [await temp.BatchAsync("H-1"), await temp.BatchAsync("H-2"), await temp.BatchAsync("H-3")];
        Random random = new(11);
        List<ReadingRecord> all = [];
        for (int n = 0; n < 150; n++)
        {
            all.Add(TempShop.Reading(batches[random.Next(3)], $"C-{n:000}", $"{6000 + n}", 6000 + n));
        }

        await temp.Shop.Readings.AddAsync(all, Cancel);
        ChartQuery query = new()
        {
            Batches = [.. batches.Select(batch => batch.Id)],
            Quantity = "dcResistance",
            Coils = 40,
        };
        (Guid, string, double)[] expected = Plainly(all);
        Assert.Equal(expected[^40..], Short(await temp.Shop.Readings.ForChartAsync(query, Cancel)));
        Assert.Equal(expected[..40], Short(await temp.Shop.Readings.ForChartAsync(query with { First = true }, Cancel)));
        IReadOnlyList<ChartReading> last = await temp.Shop.Readings.ForChartAsync(query, Cancel);
        Assert.Equal(
            Short(last)[10..20],
            Short(await temp.Shop.Readings.ForChartAsync(query with { First = true, Coils = 10, FromOrder = last[10].Order }, Cancel))
        );
        Assert.Equal(
            expected.Where(one => one.Item3 % 2 == 0).TakeLast(40),
            Short(await temp.Shop.Readings.ForChartAsync(query with { Wanted = reading => reading.Si % 2 == 0 }, Cancel))
        );
    }

    private static async Task<(BatchRecord[] Batches, List<ReadingRecord> All)> MixedAsync(TempShop temp, int seed)
    {
        BatchRecord[] batches = [await temp.BatchAsync("H-1"), await temp.BatchAsync("H-2"), await temp.BatchAsync("H-3")];
        Random random = new(seed);
        List<ReadingRecord> all = [];
        for (int n = 0; n < 250; n++)
        {
            ReadingRecord reading = TempShop.Reading(batches[random.Next(3)], $"C-{random.Next(60):000}", $"{n}", 6000 + n);
            ReadingRecord[] inForce = [.. ReadingChain.InForce(all).Where(one => one.Quantity == "dcResistance")];
            if (random.Next(4) == 0 && inForce.Length > 0)
            {
                ReadingRecord old = inForce[random.Next(inForce.Length)];
                reading =
                    random.Next(3) == 0
                        ? old with
                        {
                            Id = Guid.NewGuid(),
                            Typed = "",
                            Si = null,
                            Supersedes = old.Id,
                            Reason = "undone",
                            Withdraws = true,
                        }
                        : reading with
                        {
                            BatchId = old.BatchId,
                            Tag = old.Tag,
                            Supersedes = old.Id,
                            Reason = "read again",
                        };
            }
            else if (random.Next(5) == 0)
            {
                reading = reading with { Quantity = "inductance", Si = 2.5, AtHz = 1000 };
            }

            all.Add(reading with { TimeUtc = TempShop.Noon.AddSeconds(n) });
        }

        Assert.Equal(AddReading.Added, await temp.Shop.Readings.AddAsync(all, Cancel));
        return (batches, all);
    }

    private static (Guid, string, double)[] Plainly(List<ReadingRecord> all)
    {
        HashSet<Guid> inForce = [.. ReadingChain.InForce(all).Select(reading => reading.Id)];
        return
        [
            .. all.Where(reading => reading.Quantity == "dcResistance")
                .GroupBy(reading => (reading.BatchId, reading.Tag))
                .Where(coil => coil.Any(reading => inForce.Contains(reading.Id)))
                .Select(coil => (coil.Key.BatchId, coil.Key.Tag, coil.Last(reading => inForce.Contains(reading.Id)).Si!.Value)),
        ];
    }

    private static (Guid, string, double)[] Short(IReadOnlyList<ChartReading> readings) =>
        [.. readings.Select(reading => (reading.BatchId, reading.Tag, reading.Si))];

    /// <summary>A store that knows no short cut.</summary>
    private sealed class SlowStore(List<ReadingRecord> all) : IChartRecords
    {
        public Task<IReadOnlyList<ReadingRecord>> OfBatchAsync(Guid batchId, CancellationToken cancel) =>
            Task.FromResult<IReadOnlyList<ReadingRecord>>([.. all.Where(reading => reading.BatchId == batchId)]);
    }
}
