using Coilwright.Application.Backups;
using Coilwright.Application.Boards;
using Coilwright.Application.Comparisons;
using Coilwright.Application.Curves;
using Coilwright.Application.Exports;
using Coilwright.Application.Forecasts;
using Coilwright.Application.Instruments;
using Coilwright.Application.Judging;
using Coilwright.Application.Learning;
using Coilwright.Application.Listening;
using Coilwright.Application.Lots;
using Coilwright.Application.Magnets;
using Coilwright.Application.Measuring;
using Coilwright.Application.Notes;
using Coilwright.Application.People;
using Coilwright.Application.Plans;
using Coilwright.Application.Printing;
using Coilwright.Application.Shops;
using Coilwright.Application.Solving;
using Coilwright.Application.Tracing;
using Coilwright.Application.Winding;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Notes;
using Coilwright.Workshop.People;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.Secrets;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Steps;
using Coilwright.Workshop.Stock;
using Coilwright.Workshop.Tracing;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Application.Composition;

/// <summary>Puts the program together, alike for the pages and for the command line.</summary>
public static class CoilwrightServices
{
    /// <summary>What a person can do without a shop: forecasts, searches, comparisons, papers of a recipe.</summary>
    /// <param name="services">Where it is registered.</param>
    /// <param name="time">The clock.</param>
    public static IServiceCollection AddCoilwright(this IServiceCollection services, TimeProvider time) =>
        services
            .AddSingleton(time)
            .AddSingleton<SolvedDesigns>()
            .AddSingleton<ComparedDesigns>()
            .AddSingleton<ForecastRecipe>()
            .AddSingleton<SavedForecasts>()
            .AddSingleton<ForecastShapes>()
            .AddSingleton<SpreadRecipe>()
            .AddSingleton<SpreadService>()
            .AddSingleton<DrawSection>()
            .AddSingleton<SolveRecipe>()
            .AddSingleton<SolveService>()
            .AddSingleton<AskSearch>()
            .AddSingleton<ChooseForSpool>()
            .AddSingleton<VaryRecipe>()
            .AddSingleton<CompareRecipes>()
            .AddSingleton<CompareSolutions>()
            .AddSingleton<SetUpRecipe>()
            .AddSingleton<PrintRecipePaper>()
            .AddSingleton<FitCurve>()
            .AddSingleton<FitCurves>()
            .AddSingleton<ReadSweep>()
            .AddSingleton<SolveResonances>()
            .AddSingleton<FitSentCurves>()
            .AddSingleton<MakeSignal>()
            .AddSingleton<FitRecording>()
            .AddSingleton<StudyGauge>()
            .AddSingleton<PlanSampling>()
            .AddSingleton<RespondToLoad>()
            .AddSingleton<HearPluck>()
            .AddSingleton<Revoice>()
            .AddSingleton<HearDesigns>()
            .AddSingleton<HearRecordings>()
            .AddSingleton<BlindTests>()
            .AddSingleton<IdentifyOriginal>()
            .AddSingleton<ReadMeter>()
            .AddSingleton<WatchMeter>()
            .AddSingleton<CounterLines>()
            .AddSingleton<ChooseLots>()
            .AddSingleton<PlanJobs>()
            .AddSingleton<JudgeTable>()
            .AddSingleton<PairCoils>()
            .AddSingleton<RestoreShop>()
            .AddSingleton<VerifyShop>()
            .AddSingleton<MoveShop>()
            .AddSingleton<ImportShop>();

    /// <summary>As above, with a shop: its records, the rules for changing them, and what a person can do with them.</summary>
    /// <param name="services">Where it is registered.</param>
    /// <param name="records">The shop's records; whoever opened them closes them.</param>
    /// <param name="time">The clock.</param>
    public static IServiceCollection AddCoilwright(this IServiceCollection services, IShopRecords records, TimeProvider time) =>
        services
            .AddCoilwright(time)
            .AddRecords(records)
            .AddWinding()
            .AddPieces()
            .AddPeople()
            .AddSingleton<PrintPiecePaper>()
            .AddSingleton<PrintLabels>()
            .AddSingleton<RecallThing>()
            .AddSingleton(BackupPlan.Of(records.Backups.ShopPath, [], isDaily: false))
            .AddSingleton<BackUpShop>()
            .AddSingleton<ExportShop>()
            .AddSingleton<NoteService>()
            .AddSingleton<ImportNotes>()
            .AddSingleton<ShopServices>();

    /// <summary>The shop's records, whole and by what belongs together: a service asks for no more than it needs.</summary>
    private static IServiceCollection AddRecords(this IServiceCollection services, IShopRecords records) =>
        services
            .AddSingleton(records)
            .AddSingleton(records.Recipes)
            .AddSingleton(records.Batches)
            .AddSingleton(records.Readings)
            .AddSingleton(records.Summaries)
            .AddSingleton(records.Room)
            .AddSingleton(records.Machines)
            .AddSingleton(records.Stock)
            .AddSingleton(records.Pieces)
            .AddSingleton(records.Steps)
            .AddSingleton(records.Customers)
            .AddSingleton(records.Rules)
            .AddSingleton(records.Transfer)
            .AddSingleton(records.Learning)
            .AddSingleton(records.People)
            .AddSingleton(records.Secrets)
            .AddSingleton(records.Backups);

    private static IServiceCollection AddWinding(this IServiceCollection services) =>
        services
            .AddSingleton<RecipeService>()
            .AddSingleton<LearningService>()
            .AddSingleton<LearnFromReadings>()
            .AddSingleton<RecipeOfShop>()
            .AddSingleton<WindingService>()
            .AddSingleton<BatchDossiers>()
            .AddSingleton<BatchSummaries>()
            .AddSingleton<ListBatches>()
            .AddSingleton<MachineService>()
            .AddSingleton<StockService>()
            .AddSingleton<ControlChartService>()
            .AddSingleton<BatchEventService>()
            .AddSingleton<BatchSetUpService>();

    /// <summary>Who may sign in, and what is kept from some of them.</summary>
    private static IServiceCollection AddPeople(this IServiceCollection services) =>
        services
            .AddSingleton<ISecretHasher, PasswordHashes>()
            .AddSingleton<AccountService>()
            .AddSingleton<SignInService>()
            .AddSingleton<TokenService>()
            .AddSingleton<SecretRecipeService>();

    private static IServiceCollection AddPieces(this IServiceCollection services) =>
        services
            .AddSingleton<ReadToday>()
            .AddSingleton<ReadMagnets>()
            .AddSingleton<PieceServices>()
            .AddSingleton<PieceService>()
            .AddSingleton<CoilService>()
            .AddSingleton<AssemblyService>()
            .AddSingleton<StepService>()
            .AddSingleton<MagnetChargeService>()
            .AddSingleton<PottingService>()
            .AddSingleton<UndoService>()
            .AddSingleton<InkService>()
            .AddSingleton<StepUndoing>()
            .AddSingleton<TimeMending>()
            .AddSingleton<OutputService>()
            .AddSingleton<SetService>()
            .AddSingleton<FinalTestService>()
            .AddSingleton<DispatchService>()
            .AddSingleton<ReturnService>()
            .AddSingleton<TraceService>()
            .AddSingleton<NameSearch>()
            .AddSingleton<CustomerService>();
}
