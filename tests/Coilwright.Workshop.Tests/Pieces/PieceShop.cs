using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Tests.Winding;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Tests.Pieces;

/// <summary>A shop with a two-coil recipe, batches of both coils wound, a customer, and all that pieces go through.</summary>
internal sealed class PieceShop : IAsyncDisposable
{
    /// <summary>
    /// Rules of the invented shop: one plastic with its limit, and a clock in a zone that changes to summer time on 29 March 2026.
    /// </summary>
    public const string Rules = """
        {
          "format": "coilwright.rules/1", "serials": "{yy}{ww}-{n:000}", "timeZone": "Europe/Lisbon",
          "bathLimits": [ { "material": "abs", "limit": "65 °C" } ],
          "leadColours": [ { "coil": "slug", "end": "start", "colour": "grey" } ]
        }
        """;

    private PieceShop() { }

    public WorkingShop Shop { get; private init; } = null!;
    public PieceService Shelf { get; private set; } = null!;
    public CoilService Coils { get; private set; } = null!;
    public AssemblyService Assembly { get; private set; } = null!;
    public StepService Steps { get; private set; } = null!;
    public MagnetChargeService Magnets { get; private set; } = null!;
    public PottingService Potting { get; private set; } = null!;
    public InkService Ink { get; private set; } = null!;
    public OutputService Outputs { get; private set; } = null!;
    public SetService Sets { get; private set; } = null!;
    public UndoService Undo { get; private set; } = null!;
    public FinalTestService Test { get; private set; } = null!;
    public DispatchService DispatchService { get; private set; } = null!;
    public ReturnService Returns { get; private set; } = null!;
    public TraceService Trace { get; private set; } = null!;
    public CustomerService Customers { get; private set; } = null!;
    public RevisionRecord Revision { get; private set; } = null!;
    public BatchRecord Slugs { get; private set; } = null!;
    public BatchRecord Screws { get; private set; } = null!;

    public static CancellationToken Cancel => WorkingShop.Cancel;

    /// <param name="target">Ohms that the recipe wants of the whole pickup, ± 4 %.</param>
    /// <param name="steps">The recipe's own steps as JSON; the usual ones when empty.</param>
    public static async Task<PieceShop> StartAsync(string target = "7.76 kΩ", string steps = "")
    {
        PieceShop shop = new() { Shop = await WorkingShop.StartAsync() };
        shop.Hire();
        Assert.Empty(await shop.Shelf.Rules.KeepAsync(Guid.NewGuid(), Rules, "Joss", Cancel));
        Assert.Empty(await shop.Shop.Room.SetRoomTemperatureAsync("20 °C", "Mara", Cancel));
        Assert.Empty(await shop.Customers.AddAsync(Guid.NewGuid(), "K-031", "Pell & Daughter", Cancel));
        shop.Revision = await shop.Shop.ReleasedAsync(
            (await File.ReadAllTextAsync(RepositoryPath.Of("demo/recipes/breakwater-twin.json"), Cancel))
                .Replace("7.76 kΩ", target, StringComparison.Ordinal)
                .Replace("\"potting\":", (steps.Length > 0 ? $"\"steps\": {steps}, " : "") + "\"potting\":", StringComparison.Ordinal)
        );
        shop.Slugs = await shop.BatchAsync("B-7", "slug", "BS-", "0117", "3.92 k", "3.98 k", "4.02 k", "4.03 k");
        shop.Screws = await shop.BatchAsync("B-8", "screw", "BC-", "0121", "3.95 k", "4.01 k", "4.00 k", "3.99 k");
        return shop;
    }

    /// <summary>The next piece of a slug and a screw coil.</summary>
    public async Task<PieceRecord> MakeAsync(int number, string serial = "")
    {
        (IReadOnlyList<Problem> problems, PieceRecord? piece) = await Assembly.MakeAsync(
            Entry($"B-7/{number}", $"B-8/{number}") with
            {
                Serial = serial,
            },
            Cancel
        );
        Assert.Empty(problems);
        return piece!;
    }

    public static AssemblyEntry Entry(params string[] coils) =>
        new()
        {
            Id = Guid.NewGuid(),
            Coils = coils,
            MagnetLot = "M-5",
            Person = "Ines",
        };

    /// <summary>Takes a piece through magnets, potting and marking, up to the final test.</summary>
    public async Task ThroughStepsAsync(string serial, string basket = "K1", string mix = "I-1")
    {
        Assert.Empty(await Steps.BeginAsync(Guid.NewGuid(), "magnets", [serial], "", "Ines", Cancel));
        Assert.Empty(await Potting.InAsync(Basket(basket, serial), Cancel));
        Shop.Clock.Advance(TimeSpan.FromMinutes(12));
        Assert.Empty(await Potting.OutAsync(Guid.NewGuid(), basket, "Ines", Cancel));
        Shop.Clock.Advance(TimeSpan.FromMinutes(31));
        if ((await Ink.NewestAsync(Cancel)).All(one => one.Label != mix))
        {
            Assert.Empty(await Ink.MixAsync(Guid.NewGuid(), mix, "A-11, B-4", "20 °C", "Ines", Cancel));
        }

        Assert.Empty(await Steps.BeginAsync(Guid.NewGuid(), "marking", [serial], mix, "Ines", Cancel));
        Shop.Clock.Advance(TimeSpan.FromHours(25));
    }

    public static BasketEntry Basket(string label, params string[] serials) =>
        new()
        {
            Id = Guid.NewGuid(),
            Label = label,
            Lot = "W-3",
            Bath = "60",
            Pieces = serials,
            Person = "Ines",
        };

    /// <summary>Reopens the file, as after a power cut.</summary>
    public async Task ReopenAsync()
    {
        await Shop.ReopenAsync();
        Hire();
    }

    public ValueTask DisposeAsync() => Shop.DisposeAsync();

    private async Task<BatchRecord> BatchAsync(string name, string coil, string prefix, string spool, params string[] ohms)
    {
        BatchRecord batch = new(
            Guid.NewGuid(),
            name,
            Revision.RecipeId,
            Revision.Number,
            coil,
            12,
            prefix,
            spool,
            "Winder 2",
            "Mara",
            Shop.Clock.GetUtcNow()
        );
        await Shop.Records.Batches.AddAsync(batch, Cancel);
        for (int at = 0; at < ohms.Length; at++)
        {
            await Shop.KeptAsync(WorkingShop.Entry(batch, FormattableString.Invariant($"{prefix}{at + 1:000}"), ohms[at]));
        }

        return batch;
    }

    private void Hire()
    {
        Shelf = new PieceService(Shop.Records, Shop.Clock);
        Coils = new CoilService(Shop.Records, Shop.Room);
        Assembly = new AssemblyService(Shop.Records.Pieces, Shelf, Coils);
        Steps = new StepService(Shop.Records, Shelf);
        Magnets = new MagnetChargeService(Shop.Records, Shelf);
        Potting = new PottingService(Shop.Records, Shelf);
        Ink = new InkService(Shop.Records, Shelf, Shop.Clock);
        Outputs = new OutputService(Coils);
        Sets = new SetService(Shop.Records.Pieces, Shelf, Outputs);
        Undo = new UndoService(Shop.Records, Shelf, Potting);
        Test = new FinalTestService(Shop.Records, Shelf, Shop.Clock);
        DispatchService = new DispatchService(Shop.Records, Shelf);
        Returns = new ReturnService(Shop.Records, Shelf, Shop.Clock);
        Trace = new TraceService(Shop.Records, Shelf, Shop.Room.Dossiers);
        Customers = new CustomerService(Shop.Records.Customers, Shop.Clock);
    }
}
