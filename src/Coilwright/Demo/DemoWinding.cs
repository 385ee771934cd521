using Coilwright.Application.Composition;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Stock;

namespace Coilwright.Demo;

/// <summary>The invented shop's winders, spools, and a coil on a spindle. All of it is made up.</summary>
internal sealed class DemoWinding(ShopServices shop, DemoClock clock, TextWriter output)
{
    /// <summary>Brings winders and spools in, and tells what they are.</summary>
    public async Task FillAsync(CancellationToken cancel)
    {
        foreach ((string name, string text) in DemoFiles.Machines)
        {
            Refuse(await shop.Machines.KeepAsync(Guid.NewGuid(), text, "Joss", cancel).ConfigureAwait(false), name);
        }

        await TakeInAsync("0117", "AWG 42", "plain-enamel", "1,81 kg", "260 g", "L-31", cancel).ConfigureAwait(false);
        await TakeInAsync("0121", "AWG 42", "plain-enamel", "", "255 g", "L-33", cancel).ConfigureAwait(false);
        await TakeInAsync("0125", "AWG 43", "polyurethane", "910 g", "180 g", "L-34", cancel).ConfigureAwait(false);
        Refuse(
            await shop.Stock.MeasureAsync(Guid.NewGuid(), "0117", "10.00 m", "55.4", "23.5 °C", "Mara", cancel).ConfigureAwait(false),
            "spool 0117"
        );
        Refuse(
            await shop.Stock.MeasureAsync(Guid.NewGuid(), "0121", "10.00 m", "58.1", "23.5 °C", "Mara", cancel).ConfigureAwait(false),
            "spool 0121"
        );
        Refuse(await shop.Stock.WeighAsync(Guid.NewGuid(), "0121", "905 g", "Mara", cancel).ConfigureAwait(false), "spool 0121");
        await output.WriteLineAsync("\nThe wire on the shelf").ConfigureAwait(false);
        StockFormatter.WriteShelf(output, await shop.Stock.ShelfAsync(cancel).ConfigureAwait(false));
    }

    /// <summary>Releases a series and leaves its next coil paused on a spindle, as at a tea break.</summary>
    public async Task PauseAsync(BatchRecord batch, string counter, CancellationToken cancel)
    {
        await SayAsync(batch, BatchEventKind.Released, "", "measured warm, right at 20 °C", cancel).ConfigureAwait(false);
        await SayAsync(batch, BatchEventKind.Begun, "", "", cancel).ConfigureAwait(false);
        await SayAsync(batch, BatchEventKind.Paused, counter, "", cancel).ConfigureAwait(false);
    }

    private async Task SayAsync(BatchRecord batch, BatchEventKind kind, string counter, string note, CancellationToken cancel)
    {
        clock.Advance(TimeSpan.FromSeconds(40));
        Refuse(
            await shop
                .Run.RecordEventAsync(
                    new BatchEventEntry
                    {
                        Id = Guid.NewGuid(),
                        BatchId = batch.Id,
                        Kind = kind,
                        Counter = counter,
                        Note = note,
                        Person = "Mara",
                    },
                    cancel
                )
                .ConfigureAwait(false),
            batch.Name
        );
    }

    private async Task TakeInAsync(
        string label,
        string gauge,
        string insulation,
        string received,
        string tare,
        string lot,
        CancellationToken cancel
    )
    {
        SpoolRecord spool = new()
        {
            Id = Guid.NewGuid(),
            Label = label,
            Gauge = gauge,
            Insulation = insulation,
            Build = "single",
            Lot = lot,
            SupplierText = "made up for the demo",
            Person = "Joss",
            TimeUtc = clock.GetUtcNow(),
        };
        Refuse(await shop.Stock.TakeInAsync(spool, received, tare, cancel).ConfigureAwait(false), "spool " + label);
    }

    private static void Refuse(IReadOnlyList<Problem> problems, string source)
    {
        if (problems.Count > 0)
        {
            throw new InvalidOperationException($"The demo's own data is wrong: {source}: {ProblemFormatter.Line(problems[0])}");
        }
    }
}
