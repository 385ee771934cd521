using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Application.Forecasts;
using Coilwright.Application.Winding;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Demo;

/// <summary>
/// Makes the invented shop: recipes, batches under way, good coils and bad ones. Shop, people, recipes and readings are made up.
/// </summary>
internal sealed class DemoShop(OpenShop open, DemoClock clock, DateTimeOffset nowUtc, TextWriter output)
{
    public const string ShopName = "Lantern Quay workshop";

    /// <summary>Headlines that are told, numbered from 1.</summary>
    public const int Steps = 6;

    private const string Winder = "Mara";
    private const string Designer = "Joss";

    /// <summary>Makes the shop in a new file; its last ten days end now.</summary>
    /// <param name="file">A file that does not exist yet.</param>
    /// <param name="nowUtc">Now.</param>
    /// <param name="output">Told what is done.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task MakeAsync(string file, DateTimeOffset nowUtc, TextWriter output, CancellationToken cancel)
    {
        DemoClock clock = new(nowUtc - TimeSpan.FromDays(10));
        OpenShop making = await OpenShop.CreateAsync(file, ShopName, clock, cancel).ConfigureAwait(false);
        await using (making.ConfigureAwait(false))
        {
            await new DemoShop(making, clock, nowUtc, output).FillAsync(cancel).ConfigureAwait(false);
        }
    }

    /// <summary>Fills an empty shop and tells what it did, from recipe to verdict.</summary>
    public async Task FillAsync(CancellationToken cancel)
    {
        Dictionary<string, RevisionRecord> released = await AddRecipesAsync(cancel).ConfigureAwait(false);
        DemoWinding room = new(open.Services, clock, output);
        await room.FillAsync(cancel).ConfigureAwait(false);
        await TellForecastAsync(released["Harbour bridge"], cancel).ConfigureAwait(false);

        DemoPieces pieces = new(open.Services, clock, output);
        await pieces.EnterShopAsync(cancel).ConfigureAwait(false);
        await output
            .WriteLineAsync("\n3. Last week: two coils become a pickup that leaves the shop, and one comes back")
            .ConfigureAwait(false);
        await WindPairsAsync(released["Breakwater twin"], cancel).ConfigureAwait(false);
        await pieces.LastWeekAsync(released["Breakwater twin"], cancel).ConfigureAwait(false);

        clock.MoveTo(nowUtc - TimeSpan.FromHours(3));
        await output.WriteLineAsync("\n4. Today: a batch at the winder, one spool, one bad coil of each kind").ConfigureAwait(false);
        BatchRecord good = await BeginAsync(released["Harbour bridge"], "H-12", "H-", 24, "0117", cancel).ConfigureAwait(false);
        await WindGoodRunAsync(good, released["Harbour bridge"], cancel).ConfigureAwait(false);
        await ShowAsync(good, cancel).ConfigureAwait(false);
        await room.PauseAsync(good, "3,150", cancel).ConfigureAwait(false);

        await output.WriteLineAsync("\n5. A second batch from a thin spool").ConfigureAwait(false);
        BatchRecord thin = await BeginAsync(released["Sandbar wide"], "S-4", "S-", 12, "0121", cancel).ConfigureAwait(false);
        await WindThinRunAsync(thin, released["Sandbar wide"], cancel).ConfigureAwait(false);
        await ShowAsync(thin, cancel).ConfigureAwait(false);

        BatchRecord slugs = await BeginAsync(released["Breakwater twin"], "B-7", "BL-", 10, "0117", cancel).ConfigureAwait(false);
        await WindPlainRunAsync(slugs, released["Breakwater twin"], 4, cancel).ConfigureAwait(false);
        await output.WriteLineAsync("\nA third batch, B-7, is under way for the pages.").ConfigureAwait(false);

        await output.WriteLineAsync("\n6. The clocks: what hangs in the wax, what is held, what may move").ConfigureAwait(false);
        clock.MoveTo(nowUtc - TimeSpan.FromMinutes(38));
        await pieces.TodayAsync(released["Breakwater twin"], cancel).ConfigureAwait(false);
    }

    private async Task<Dictionary<string, RevisionRecord>> AddRecipesAsync(CancellationToken cancel)
    {
        await output.WriteLineAsync($"{ShopName}: an invented shop\n\n1. Recipes brought in").ConfigureAwait(false);
        Dictionary<string, RevisionRecord> released = new(StringComparer.Ordinal);
        foreach ((string name, string text) in DemoFiles.Recipes)
        {
            Guid id = Guid.NewGuid();
            RevisionRecord draft = Checked(
                await open.Services.Recipes.SaveAsync(id, text, "", Designer, 0, cancel).ConfigureAwait(false),
                name
            );
            RevisionRecord revision = Checked(
                await open.Services.Recipes.ReleaseAsync(id, draft.Number, Designer, cancel).ConfigureAwait(false),
                name
            );
            released[revision.RecipeName] = revision;
            await output.WriteLineAsync($"  {revision.RecipeName}, revision {revision.Letter}, released").ConfigureAwait(false);
        }

        return released;
    }

    private async Task TellForecastAsync(RevisionRecord revision, CancellationToken cancel)
    {
        Recipe recipe = RecipeReader.ReadFile(revision.Json).OrRefuse(revision.RecipeName);
        LoadCircuit load = LoadReader.Read(DemoFiles.PlayerLoad).OrRefuse("demo load");
        Prediction prediction = open.Use<ForecastRecipe>().Forecast(recipe, load, new ForecastOptions(), cancel);
        await output.WriteLineAsync("\n2. What one of them will measure, on the player's controls and cable").ConfigureAwait(false);
        PredictionFormatter.Write(output, revision.RecipeName, prediction);
        await output.WriteLineAsync().ConfigureAwait(false);
        SetUpFormatter.Write(
            output,
            open.Use<SetUpRecipe>()
                .SetUp(
                    recipe,
                    parts: null,
                    "Winder 2",
                    23.5,
                    await open.Services.Machines.FindAsync("Winder 2", cancel).ConfigureAwait(false),
                    cancel
                )
        );
    }

    /// <summary>Both coils of a two-coil pickup, the screw coils a shade higher.</summary>
    private async Task WindPairsAsync(RevisionRecord revision, CancellationToken cancel)
    {
        BatchRecord slugs = await BeginAsync(revision, "B-5", "BS-", 5, "0117", cancel).ConfigureAwait(false);
        await WindPlainRunAsync(slugs, revision, 5, cancel, seed: 21).ConfigureAwait(false);
        BatchRecord screws = await BeginAsync(revision, "B-6", "BC-", 5, "0117", cancel, coil: 1).ConfigureAwait(false);
        await WindPlainRunAsync(screws, revision, 5, cancel, seed: 22).ConfigureAwait(false);
    }

    private async Task<BatchRecord> BeginAsync(
        RevisionRecord revision,
        string name,
        string prefix,
        int quantity,
        string spool,
        CancellationToken cancel,
        int coil = 0
    )
    {
        Recipe recipe = RecipeReader.Read(revision.Json).OrRefuse(revision.RecipeName);
        BatchRecord batch = new(
            Guid.NewGuid(),
            name,
            revision.RecipeId,
            revision.Number,
            recipe.Coils[coil].Name,
            quantity,
            prefix,
            spool,
            "Winder 2",
            Winder,
            clock.GetUtcNow()
        );
        Refuse(await open.Services.Winding.BeginBatchAsync(batch, cancel).ConfigureAwait(false), name);
        return batch;
    }

    private async Task WindGoodRunAsync(BatchRecord batch, RevisionRecord revision, CancellationToken cancel)
    {
        DemoCoils coils = MakeCoils(revision, 12);
        await EnterAsync(batch, coils.Next(1.0, 33, fault: DemoFault.WarmUnknown), cancel).ConfigureAwait(false);
        Refuse(await open.Services.Winding.SetRoomTemperatureAsync("23.5 °C", Winder, cancel).ConfigureAwait(false), "room");
        for (int number = 2; number <= 20; number++)
        {
            DemoFault fault = number switch
            {
                9 => DemoFault.ShortedTurns,
                14 => DemoFault.Open,
                _ => DemoFault.None,
            };
            await EnterAsync(batch, coils.Next(1.003, 23.5, fault: fault), cancel).ConfigureAwait(false);
        }
    }

    private async Task WindThinRunAsync(BatchRecord batch, RevisionRecord revision, CancellationToken cancel)
    {
        DemoCoils coils = MakeCoils(revision, 4);
        for (int number = 1; number <= 10; number++)
        {
            await EnterAsync(batch, coils.Next(number <= 4 ? 1.0 : 1.055, 24, "24 °C"), cancel).ConfigureAwait(false);
        }
    }

    private async Task WindPlainRunAsync(BatchRecord batch, RevisionRecord revision, int count, CancellationToken cancel, int seed = 7)
    {
        DemoCoils coils = MakeCoils(revision, seed);
        for (int number = 1; number <= count; number++)
        {
            await EnterAsync(batch, coils.Next(1.003, 23.5, "23.5 °C"), cancel).ConfigureAwait(false);
        }
    }

    private async Task EnterAsync(BatchRecord batch, DemoCoil coil, CancellationToken cancel)
    {
        clock.Advance(TimeSpan.FromSeconds(140));
        BatchStatus standing = await open.Services.Winding.StatusAsync(batch.Id, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException("The batch just begun is gone.");
        CoilEntryOutcome outcome = await open
            .Services.Winding.RecordCoilAsync(
                new CoilEntry
                {
                    Id = Guid.NewGuid(),
                    BatchId = batch.Id,
                    Tag = standing.NextTag ?? throw new InvalidOperationException("The batch is full."),
                    Resistance = coil.Resistance,
                    Temperature = coil.Temperature,
                    Inductance = coil.Inductance,
                    InductanceAt = coil.Inductance.Length > 0 ? "1 kHz" : "",
                    Instrument = "bench meter",
                    Person = Winder,
                },
                cancel
            )
            .ConfigureAwait(false);
        Refuse(outcome.Problems, batch.Name);
    }

    private async Task ShowAsync(BatchRecord batch, CancellationToken cancel)
    {
        BatchStatus standing = await open.Services.Winding.StatusAsync(batch.Id, cancel).ConfigureAwait(false)
            ?? throw new InvalidOperationException("The batch just begun is gone.");
        BatchFormatter.Write(output, standing);
        foreach (CoilDossier coil in standing.Coils.Where(coil => coil.Verdict.Kind == VerdictKind.Reject))
        {
            await output.WriteLineAsync($"  {coil.Tag} is rejected: {VerdictFormatter.Why(coil.Verdict)}").ConfigureAwait(false);
        }
    }

    /// <summary>Coils about the recipe's own target where it sets one, as a shop that has wound them before would see.</summary>
    private DemoCoils MakeCoils(RevisionRecord revision, int seed)
    {
        Recipe recipe = RecipeReader.ReadFile(revision.Json).OrRefuse(revision.RecipeName);
        CoilForecast coil = open.Use<ForecastRecipe>().Forecast(recipe, load: null, new ForecastOptions(), CancellationToken.None).Coils[0];
        return new DemoCoils(
            seed,
            VerdictLimits.TargetOf(recipe, 0, QuantityKey.DcResistance)?.Nominal ?? coil.DcResistance.Value,
            coil.Inductance.Value
        );
    }

    private static RevisionRecord Checked(RecipeOutcome outcome, string source)
    {
        Refuse(outcome.Problems, source);
        return outcome.Revision ?? throw new InvalidOperationException("A saved recipe has a revision.");
    }

    private static void Refuse(IReadOnlyList<Problem> problems, string source)
    {
        if (problems.Count > 0)
        {
            throw new InvalidOperationException($"The demo's own data is wrong: {source}: {ProblemFormatter.Line(problems[0])}");
        }
    }
}
