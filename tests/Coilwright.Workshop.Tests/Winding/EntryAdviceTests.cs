using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Winding;

/// <summary>What a person is told at entry beside the verdict.</summary>
public sealed class EntryAdviceTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Story_5_drift_is_told_at_entry_the_moment_it_arises_by_the_rule_of_the_batch_page()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync(quantity: 40);
        List<string> told = [];
        for (int coil = 1; coil <= 30; coil++)
        {
            double kiloOhm = (coil > 24 ? 6.23 : 6.18) + 0.012 * ((coil * 7 % 5) - 2);
            string tag = string.Create(CultureInfo.InvariantCulture, $"C-{coil:000}");
            CoilEntryOutcome outcome = await shop.Room.RecordCoilAsync(
                WorkingShop.Entry(batch, tag, string.Create(CultureInfo.InvariantCulture, $"{kiloOhm:0.000} k")),
                Cancel
            );
            told.AddRange(outcome.Signals.Select(rule => $"{tag}: {rule}"));
            shop.Clock.Advance(TimeSpan.FromSeconds(30));
            if (outcome.Signals.Count > 0)
            {
                Assert.True(coil > 24, tag + " is before the drift");
            }
        }

        BatchStatus standing = (await shop.Room.StatusAsync(batch.Id, Cancel))!;
        Assert.NotEmpty(told);
        Assert.Equal(
            BatchChart.Signals(standing.Coils.Select(coil => (coil.Tag, coil.Verdict))).Select(signal => $"{signal.Tag}: {signal.Rule}"),
            told
        );
    }

    [Fact]
    public async Task A_rejected_coil_is_told_its_cause_and_the_quickest_check_once_in_words()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        Verdict open = (await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "open"))).Verdict,
            broken = (await shop.KeptAsync(WorkingShop.Entry(batch, "C-002", "0.26 M"))).Verdict;
        Assert.Equal(
            ("open: reheat the joints first (95 %)", "then look for a broken lead"),
            (VerdictAdvice.Cause(open), VerdictAdvice.Check(open))
        );
        Assert.StartsWith(
            "probably broken wire: the meter sees only the coil's stray capacitance",
            VerdictAdvice.Cause(broken),
            StringComparison.Ordinal
        );
        Assert.Equal("check joints and start lead", VerdictAdvice.Check(broken));
    }

    [Fact]
    public async Task Read_again_with_the_same_result_a_coil_is_rejected()
    {
        await using WorkingShop shop = await WorkingShop.StartAsync();
        BatchRecord batch = await shop.BatchAsync();
        CoilDossier once = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "61.8 k") with { Inductance = "2.4 H" });
        CoilDossier twice = await shop.KeptAsync(WorkingShop.Entry(batch, "C-001", "61.8 k"));
        Assert.Equal((VerdictKind.Hold, VerdictKind.Reject), (once.Verdict.Kind, twice.Verdict.Kind));
        Assert.True(once.Verdict.OffLimits);
    }

    [Theory]
    [InlineData("2.4 H", 1)] // 2.256 to 2.544 H: a good coil shows 2.55 H
    [InlineData("2.5 H", 0)]
    public void A_target_that_leaves_out_the_recipes_own_forecast_is_told(string inductance, int warnings)
    {
        Recipe recipe = RecipeReader.Read(WorkingShop.Harbour().Replace("2.4 H", inductance, StringComparison.Ordinal)).Value!;
        Prediction prediction = Forecaster.Predict(
            RecipeModelBuilder.ToModel(recipe),
            load: null,
            new ForecastOptions { Strings = false },
            TestContext.Current.CancellationToken
        );
        IReadOnlyList<ForecastWarning> told = RecipeTargets.LeavingOutForecast(recipe, prediction);
        Assert.Equal(warnings, told.Count);
        Assert.All(told, warning =>
            Assert.StartsWith(
                "the target for inductance, 2.26 H to 2.54 H, leaves out what this recipe forecasts",
                warning.Message,
                StringComparison.Ordinal
            )
        );
    }
}
