using Coilwright.Web.Pages;

namespace Coilwright.Web.Views.Help;

/// <summary>Which part of help the question mark of each page opens: the one place where that is written.</summary>
public static class HelpTable
{
    private const string Pages = "page-by-page",
        Winder = "first-hour-at-the-winder",
        Assembly = "assembly-day",
        Measuring = "measuring-impedance";

    /// <summary>The list of all pages of help, where nothing fits better.</summary>
    public const string Everything = "/help";

    /// <summary>Name of the page's component, the page of help and the anchor in it.</summary>
    public static IReadOnlyDictionary<string, (string Page, string Anchor)> All { get; } =
        new Dictionary<string, (string Page, string Anchor)>(StringComparer.Ordinal)
        {
            [nameof(TodayPage)] = (Pages, "today"),
            [nameof(DemoPage)] = ("an-empty-shop", "the-demo-shop"),
            [nameof(RecipesPage)] = (Pages, "recipes"),
            [nameof(NewRecipePage)] = ("an-empty-shop", "a-recipe"),
            [nameof(NameRecipePage)] = ("an-empty-shop", "a-recipe"),
            [nameof(RecipePage)] = (Pages, "a-recipe"),
            [nameof(SensitivityPage)] = (Pages, "small-changes"),
            [nameof(ComparePage)] = (Pages, "compare"),
            [nameof(ListenPage)] = ("listen-before-you-wind", "on-the-page-listen"),
            [nameof(RecordingPage)] = ("listen-before-you-wind", "your-own-recording-on-the-page"),
            [nameof(BlindPage)] = ("do-i-really-hear-it", ""),
            [nameof(SolvePage)] = ("hotter-but-keep-the-top-end", "ask-backwards"),
            [nameof(SpreadPage)] = (Pages, "spread-of-a-run"),
            [nameof(HoldPage)] = (Pages, "keep-turns-or-keep-ohms"),
            [nameof(VariantsPage)] = (Pages, "variants"),
            [nameof(BatchesPage)] = (Pages, "batches"),
            [nameof(BatchStartPage)] = ("an-empty-shop", "a-batch"),
            [nameof(BatchPage)] = ("when-a-coil-is-off", ""),
            [nameof(StoredBatchPage)] = (Pages, "correct-an-entry"),
            [nameof(EntryPage)] = ("first-hour", "enter-coils"),
            [nameof(WindPage)] = (Winder, "the-series"),
            [nameof(CoilPage)] = ("when-a-coil-is-off", "read-it-again-cold"),
            [nameof(CorrectPage)] = ("when-a-coil-is-off", "misread-or-written-under-a-wrong-tag"),
            [nameof(SpoolsPage)] = (Winder, "take-the-spool-in"),
            [nameof(MachinesPage)] = (Winder, "test-the-counter"),
            [nameof(MachineFormPage)] = (Pages, "winders"),
            [nameof(ChartsPage)] = (Pages, "charts"),
            [nameof(AssemblyPage)] = (Assembly, "pair-the-coils-at-hand"),
            [nameof(SetsPage)] = (Assembly, "match-a-set"),
            [nameof(ClocksPage)] = (Assembly, "what-may-move"),
            [nameof(ClockPage)] = (Pages, "is-the-clock-right"),
            [nameof(TestPage)] = (Assembly, "final-test"),
            [nameof(MagnetsPage)] = (Assembly, "magnets"),
            [nameof(InstrumentsPage)] = ("hook-up-a-meter", ""),
            [nameof(MeasurePage)] = (Measuring, ""),
            [nameof(MeasureCurvePage)] = (Measuring, "the-fit"),
            [nameof(MeasureSweepPage)] = (Measuring, "with-an-audio-interface"),
            [nameof(MeasureResonancePage)] = (Measuring, "with-nothing-but-a-resonance"),
            [nameof(MeasureGaugePage)] = (Pages, "gauge-study"),
            [nameof(MeasureSamplePage)] = (Pages, "sampling"),
            [nameof(PiecesPage)] = (Pages, "pieces"),
            [nameof(PiecePage)] = ("a-pickup-comes-back", "find-it"),
            [nameof(LabelsPage)] = (Pages, "labels"),
            [nameof(FindPage)] = (Pages, "find-and-recall"),
            [nameof(RecallPage)] = ("a-pickup-comes-back", "is-it-one-piece-or-many"),
            [nameof(ShopPage)] = (Pages, "customers"),
            [nameof(EraseCustomerPage)] = (Pages, "customers"),
            [nameof(RulesPage)] = (Assembly, "state-the-shop-s-own-rules-once"),
            [nameof(SecretPage)] = ("who-may-see-what", "secret-recipes"),
            [nameof(PeoplePage)] = ("who-may-see-what", ""),
            [nameof(SignInPage)] = ("who-may-see-what", "signing-in"),
            [nameof(WhoPage)] = ("who-may-see-what", "a-tablet-that-many-share"),
            [nameof(AccountPage)] = ("who-may-see-what", "my-account"),
            [nameof(FilesPage)] = (Pages, "bring-in-files"),
            [nameof(BackupsPage)] = ("backup-in-two-minutes", ""),
            [nameof(MessagePage)] = (Pages, ""),
            [nameof(HelpListPage)] = (Pages, ""),
            [nameof(HelpTextPage)] = (Pages, ""),
        };

    /// <summary>Where the question mark of a page leads.</summary>
    public static string AddressOf(string page)
    {
        if (!All.TryGetValue(page, out (string Page, string Anchor) target))
        {
            return Everything;
        }

        return $"/help/{target.Page}" + (target.Anchor.Length > 0 ? "#" + target.Anchor : "");
    }
}
