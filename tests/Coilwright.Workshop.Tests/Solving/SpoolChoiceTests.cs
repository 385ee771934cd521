using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Tests.Solving;

/// <summary>A spool is read and the maker chooses: hold turns, or hold ohms. A variant keeps what it does not change.</summary>
public sealed class SpoolChoiceTests
{
    private static string Recipe(string coreLength = "61.8 mm", string spacing = "10.4 mm") =>
        $$"""
            {
              "format": "coilwright.recipe/1", "name": "spool choice",
              "strings": { "count": 6, "spacing": "{{spacing}}", "clearance": "2.5 mm", "scaleLength": "648 mm", "fromBridge": "45 mm" },
              "coils": [ {
                "name": "main",
                "bobbin": { "coreLength": "{{coreLength}}", "coreWidth": "6.2 mm", "windingHeight": "11 mm", "maxBuild": "4.3 mm" },
                "wire": { "gauge": "AWG 42" },
                "winding": { "turns": 8000, "pitch": "0.19 mm" },
                "poles": [ { "shape": "rod", "material": "alnico-5", "diameter": "4.75 mm", "length": "17 mm", "count": 6,
                  "spacing": "{{spacing}}", "top": "9 mm", "magnetised": "north-up" } ]
              } ]
            }
            """;

    private const string Twin = """
        {
          "format": "coilwright.recipe/1", "name": "spool choice, two coils", "connection": "series",
          "coils": [
            { "name": "a", "bobbin": { "coreLength": "61 mm", "coreWidth": "5.6 mm", "windingHeight": "6.4 mm" },
              "wire": { "gauge": "AWG 42" }, "winding": { "turns": 5000, "pitch": "0.19 mm" }, "position": { "y": "-9.5 mm" } },
            { "name": "b", "bobbin": { "coreLength": "61 mm", "coreWidth": "5.6 mm", "windingHeight": "6.4 mm" },
              "wire": { "gauge": "AWG 42" }, "winding": { "turns": 5000, "pitch": "0.19 mm", "direction": "clockwise" },
              "position": { "y": "9.5 mm" } }
          ]
        }
        """;

    private static Recipe Read(string json) => RecipeReader.Read(json).Value!;

    private static Prediction Predict(string json) =>
        Forecaster.Predict(RecipeModelBuilder.ToModel(Read(json)), null, cancel: TestContext.Current.CancellationToken);

    // By hand: 56.2 Ω over 10 m at 23.5 °C is 5.62/(1 + 0.00393·3.5) = 5.544 Ω/m, 1.8 % above 42 AWG's 5.445.
    [Fact]
    public void Ten_metres_of_56_2_ohm_at_23_5_degrees_hold_turns_or_hold_ohms()
    {
        SpoolMeasure measure = SpoolMeasure.For(WireCatalogue.Standard.Find("AWG 42")!, 10, 56.2, 23.5);
        SpoolChoice choice = SpoolChoice.Of(
            RecipeModelBuilder.ToModel(Read(Recipe())),
            null,
            measure.OhmPerM,
            cancel: TestContext.Current.CancellationToken
        );

        Assert.Equal(5.544, choice.OhmPerM.Value, 0.0005);
        Assert.Equal(0.018, choice.Deviation, 0.0005);
        Assert.Equal(6180, choice.Nominal.ResistanceOhm, 15.0);
        Assert.Equal(6300, choice.HoldTurns.ResistanceOhm, 15.0);
        Assert.Equal(0, choice.HoldTurns.InductanceChange, 1e-9);
        // 8,000/1.018 = 7,858 with the mean turn held; a thinner winding has a shorter one
        Assert.Equal(7856, choice.HoldOhms.Turns[0], 25.0);
        Assert.Equal(choice.Nominal.ResistanceOhm, choice.HoldOhms.ResistanceOhm, 1.0);
        Assert.Equal(-0.036, choice.HoldOhms.InductanceChange, 0.005);
        Assert.Equal(-0.16, choice.HoldOhms.OutputChangeDb!.Value, 0.03);
    }

    // The spool was read to ±0.5 %, the stretch of winding and the counter add their own; the recipe's wire counts as specified.
    [Fact]
    public void What_the_spool_leaves_open_stands_beside_each_choice()
    {
        SpoolMeasure measure = SpoolMeasure.For(WireCatalogue.Standard.Find("AWG 42")!, 10, 56.2, 23.5);
        SpoolChoice choice = SpoolChoice.Of(
            RecipeModelBuilder.ToModel(Read(Recipe())),
            null,
            measure.OhmPerM,
            cancel: TestContext.Current.CancellationToken
        );
        Estimate ohm = choice.HoldTurns.CoilOhm[0],
            change = choice.HoldTurns.Line("dcResistance")!.Ratio!.Value;
        double spool = (measure.OhmPerM.High - measure.OhmPerM.Low) / 2 / measure.OhmPerM.Value;
        Assert.Equal(spool, (change.High - change.Low) / 2 / change.Value, 1e-4); // stretch and turns are the same before and after
        Assert.True((ohm.High - ohm.Low) / 2 / ohm.Value > spool);
        Assert.Equal(ohm.Value, choice.HoldTurns.ResistanceOhm, 1e-9);
    }

    // Two coils on one spool: each holds its own ohms, so their sum does.
    [Fact]
    public void Of_two_coils_only_the_one_on_the_spool_changes_its_turns()
    {
        PickupModel twin = RecipeModelBuilder.ToModel(Read(Twin));
        SpoolChoice one = SpoolChoice.Of(
            twin,
            [0],
            Estimate.Within(5.6, 0.005, Basis.Measured),
            cancel: TestContext.Current.CancellationToken
        );
        SpoolChoice both = SpoolChoice.Of(
            twin,
            null,
            Estimate.Within(5.6, 0.005, Basis.Measured),
            cancel: TestContext.Current.CancellationToken
        );
        Assert.Equal(5000, one.HoldOhms.Turns[1]);
        Assert.Equal(both.HoldOhms.Turns[0], one.HoldOhms.Turns[0]);
        Assert.Equal(both.HoldOhms.Turns[0], both.HoldOhms.Turns[1]);
        Assert.Equal(both.Nominal.ResistanceOhm, both.HoldOhms.ResistanceOhm, 1.0); // a whole turn is about 0.7 Ω
    }

    [Fact]
    public void Wider_spacing_on_the_same_core_leaves_the_ohms_alone()
    {
        Prediction narrow = Predict(Recipe(spacing: "9.84 mm")),
            wide = Predict(Recipe(spacing: "10.4 mm")); // 49.2 and 52 mm over six poles
        Assert.Equal(narrow.Pickup.DcResistance.Value, wide.Pickup.DcResistance.Value, 1e-9);
        Assert.InRange(Math.Abs(wide.Pickup.Inductance.Value / narrow.Pickup.Inductance.Value - 1), 1e-5, 0.02);
    }

    // Twice 2.8 mm of straight are 5.6 mm of mean turn: 4.5 % on 125 mm, 3.9 % on this bobbin's 142.
    [Fact]
    public void A_core_2_8_mm_longer_has_a_mean_turn_5_6_mm_longer_and_ohms_in_step()
    {
        Prediction shorter = Predict(Recipe()),
            longer = Predict(Recipe(coreLength: "64.6 mm"));
        double meanTurn = shorter.Coils[0].MeanTurnLength.Value;
        Assert.Equal(5.6e-3, longer.Coils[0].MeanTurnLength.Value - meanTurn, 1e-6);
        Assert.Equal(1 + 5.6e-3 / meanTurn, longer.Pickup.DcResistance.Value / shorter.Pickup.DcResistance.Value, 1e-6);
        Assert.InRange(longer.Pickup.Inductance.Value / shorter.Pickup.Inductance.Value, 1.01, 1.06);
    }
}
