using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving;

namespace Coilwright.Workshop.Tests.Solving;

/// <summary>Small changes against arithmetic, and what cannot be made said in words.</summary>
public sealed class RecipeSensitivityTests
{
    private static readonly LoadCircuit s_load = new()
    {
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
        Volume = new(500e3, 1),
    };

    private static string Text(string gauge = "AWG 42", int turns = 8000, string room = "4.3 mm", string wire = "", string winding = "") =>
        $$"""
            {
              "format": "coilwright.recipe/1", "name": "small changes",
              "strings": { "count": 6, "spacing": "10.4 mm", "clearance": "2.5 mm", "scaleLength": "648 mm", "fromBridge": "45 mm" },
              "coils": [ {
                "name": "main",
                "bobbin": { "coreLength": "61.8 mm", "coreWidth": "6.2 mm", "windingHeight": "11 mm", "maxBuild": "{{room}}" },
                "wire": { {{(gauge.Length > 0 ? $"\"gauge\": \"{gauge}\"" : "")}}{{wire}} },
                "winding": { "turns": {{turns}}, "pitch": "0.19 mm"{{winding}} },
                "poles": [ { "shape": "rod", "material": "alnico-5", "diameter": "4.75 mm", "length": "17 mm", "count": 6,
                  "spacing": "10.4 mm", "top": "9 mm", "magnetised": "north-up" } ]
              } ]
            }
            """;

    private static Dictionary<string, SensitivityLine> Of(string json) =>
        RecipeSensitivity
            .Of(RecipeReader.Read(json).Value!, s_load, cancel: TestContext.Current.CancellationToken)
            .ToDictionary(line => line.Change, StringComparer.Ordinal);

    private static double Ratio(SensitivityLine line, string name) => line.Effects.Single(effect => effect.Name == name).Ratio!.Value.Value;

    // 1/1.01² of the ohms per metre; the winding grows by the copper it gained, the film stays.
    [Fact]
    public void One_per_cent_of_copper_takes_two_per_cent_of_the_ohms_of_a_metre()
    {
        SensitivityLine thicker = Of(Text())["thickerWire"];
        WireModel wire = WireCatalogue.Standard.ModelFor("AWG 42", "single", "plain-enamel");
        double grown = (wire.OverallDiameterM.Value + 0.01 * wire.BareDiameterM.Value) / wire.OverallDiameterM.Value;

        Prediction now = Forecaster.Predict(
            RecipeModelBuilder.ToModel(RecipeReader.Read(Text()).Value!),
            s_load,
            cancel: TestContext.Current.CancellationToken
        );
        double build = now.Coils[0].Build.Value,
            meanTurn = now.Coils[0].MeanTurnLength.Value;
        // The mean turn lies half the build out: π times what the build grows longer.
        double longer = 1 + Math.PI * build * (grown * grown - 1) / meanTurn;
        Assert.Equal(longer / (1.01 * 1.01), Ratio(thicker, "dcResistance"), 3e-4); // whole layers against a smooth build
        Assert.Equal(-0.0197, 1 / (1.01 * 1.01) - 1, 1e-4);
        Assert.Equal(grown * grown, Ratio(thicker, "fill"), 1e-6);
    }

    // R = N·mean turn·Ω/m with a mean turn that grows by π·build/N a turn; L goes with N² as far as the coil keeps its shape.
    [Fact]
    public void A_hundred_turns_more_follow_turns_for_ohms_and_their_square_for_henry()
    {
        SensitivityLine more = Of(Text())["moreTurns"];
        const double turns = 8100.0 / 8000;
        Prediction now = Forecaster.Predict(
            RecipeModelBuilder.ToModel(RecipeReader.Read(Text()).Value!),
            null,
            cancel: TestContext.Current.CancellationToken
        );
        double longer = 1 + Math.PI * now.Coils[0].Build.Value * (turns - 1) / now.Coils[0].MeanTurnLength.Value;
        Assert.Equal(turns * longer, Ratio(more, "dcResistance"), 3e-4);
        Assert.Equal(turns * turns, Ratio(more, "inductance"), 0.002); // the added turns lie outside: a little off the square
        Assert.Equal(turns, Ratio(more, "output"), 0.002);
        Assert.Equal(turns, Ratio(more, "fill"), 1e-9);
        Assert.True(Ratio(more, "loadedPeak") < 1);
    }

    [Fact]
    public void A_gauge_step_is_the_whole_forecast_of_that_gauge()
    {
        Dictionary<string, SensitivityLine> lines = Of(Text(room: "9 mm"));
        Prediction finer = Forecaster.Predict(
            RecipeModelBuilder.ToModel(RecipeReader.Read(Text("AWG 43", room: "9 mm")).Value!),
            s_load,
            cancel: TestContext.Current.CancellationToken
        );
        foreach (string name in RecipeSensitivity.Results)
        {
            Estimate then = lines["finerGauge"].Effects.Single(effect => effect.Name == name).Second!.Value,
                alone = finer.Named[name].Estimate;
            Assert.Equal(alone.Value, then.Value, 1e-9 * Math.Abs(alone.Value));
            Assert.Equal(alone.Low, then.Low, 1e-9 * Math.Abs(alone.Low));
        }

        // By the standard's nominal ohms per metre: 6.88/5.45 = 1.26 and up, less by a thinner winding's shorter mean turn.
        double perMetre = WireCatalogue.Standard.Find("AWG 43")!.NominalOhmPerM / WireCatalogue.Standard.Find("AWG 42")!.NominalOhmPerM;
        Assert.InRange(Ratio(lines["finerGauge"], "dcResistance"), 0.94 * perMetre, perMetre);
        Assert.True(Ratio(lines["coarserGauge"], "dcResistance") < 1);
    }

    [Fact]
    public void A_higher_winding_and_softer_poles_move_what_they_should()
    {
        Dictionary<string, SensitivityLine> lines = Of(Text());
        Assert.Equal(11.0 / 12, Ratio(lines["higher"], "fill"), 1e-9);
        Assert.True(Ratio(lines["higher"], "dcResistance") < 1); // a thinner winding has a shorter mean turn
        Assert.Equal(1, Ratio(lines["permeablePoles"], "dcResistance"), 1e-12);
        Assert.InRange(Ratio(lines["permeablePoles"], "inductance"), 1.001, 1.1);
    }

    [Theory]
    [InlineData("AWG 50", "finerGauge", "AWG 50")]
    [InlineData("AWG 34", "coarserGauge", "AWG 34")]
    public void Beyond_the_table_there_is_no_gauge_and_it_says_so(string gauge, string change, string last)
    {
        SensitivityLine line = Of(Text(gauge, turns: 1000))[change];
        Assert.Empty(line.Effects);
        Assert.Contains("ends at " + last, line.WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void Wire_without_a_gauge_has_no_step_and_a_full_bobbin_no_room()
    {
        Dictionary<string, SensitivityLine> bare = Of(Text("", wire: "\"bareDiameter\": \"63 µm\""));
        Assert.Contains("not by a gauge", bare["finerGauge"].WhyNot, StringComparison.Ordinal);
        Assert.Null(bare["thickerWire"].WhyNot);

        double build = Forecaster
            .Predict(RecipeModelBuilder.ToModel(RecipeReader.Read(Text()).Value!), null, cancel: TestContext.Current.CancellationToken)
            .Coils[0]
            .Build.Value;
        Dictionary<string, SensitivityLine> full = Of(
            Text(room: string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{build * 1e3 * 1.005:F4} mm"))
        );
        Assert.Contains("does not fit", full["moreTurns"].WhyNot, StringComparison.Ordinal);
        Assert.Contains("does not fit", full["coarserGauge"].WhyNot, StringComparison.Ordinal);
        Assert.Null(full["finerGauge"].WhyNot);
    }

    [Fact]
    public void A_capacitance_measured_on_the_winding_as_it_is_makes_no_false_step()
    {
        double plain = Ratio(Of(Text())["moreTurns"], "capacitance");
        Assert.Equal(plain, Ratio(Of(Text(winding: ", \"capacitance\": \"300 pF\""))["moreTurns"], "capacitance"), 1e-9);
    }
}
