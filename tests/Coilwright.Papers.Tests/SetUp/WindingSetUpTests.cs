using Coilwright.Analysis.Forecasts;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Tests.SetUp;

public sealed class WindingSetUpTests
{
    private const string RecipeText = """
        { "format": "coilwright.recipe/1", "name": "Harbour bridge",
          "coils": [ { "name": "main",
            "bobbin": { "coreLength": "64 mm", "coreWidth": "6.2 mm", "windingHeight": "11 mm", "maxBuild": "4.3 mm" },
            "wire": { "gauge": "AWG 42" }, "winding": { "turns": 8000 } } ],
          "targets": { "dcResistance": { "nominal": "6.18 kΩ", "tolerance": "4 %" } } }
        """;

    private static readonly WindingSetUp s_setUp = For(23);

    [Fact]
    public void Limits_stand_at_20_degrees_and_in_the_room()
    {
        CoilSetUp coil = s_setUp.Coils[0];

        // 6.18 kΩ ± 4 %
        Assert.Equal((5932.8, 6427.2), (Math.Round(coil.At20C.LowOhm!.Value, 6), Math.Round(coil.At20C.HighOhm!.Value, 6)));
        Assert.Equal(6427.2 * (1 + 0.00393 * 15), For(35).Coils[0].AtRoom.HighOhm!.Value, 1e-6);
    }

    [Fact]
    public void Time_layers_and_fit_follow_from_the_recipe()
    {
        CoilSetUp coil = s_setUp.Coils[0];

        Assert.Equal(400, coil.RunTimeS!.Value, 1e-9); // 8,000 turns at 1,200 rpm
        Assert.True(s_setUp.Fits);
        Assert.Equal("fits, 0.52 mm to spare", For(23, maxBuildM: 4.3e-3).Coils[0].Fill.Words);
        Assert.False(For(23, maxBuildM: 3.5e-3).Fits);
    }

    // Maximum 22.23 and 17.23 gf (wire-mill chart, read); work at 50 to 80 % of it. Story 12 prints 8.6–13.8 for 43 AWG.
    [Theory]
    [InlineData("AWG 42", 11.1, 17.8)]
    [InlineData("AWG 43", 8.6, 13.8)]
    public void Tension_band_follows_the_gauge(string gauge, double lowGf, double highGf)
    {
        TensionAdvice advice = TensionAdvice.For(Example.Model.Coils[0].Wire with { Gauge = gauge }, ownN: null);

        Assert.Equal(lowGf, advice.LowN / TensionBand.NewtonPerGramForce, 0.05);
        Assert.Equal(highGf, advice.HighN / TensionBand.NewtonPerGramForce, 0.05);
    }

    [Theory]
    [InlineData(9, "below")]
    [InlineData(14, "inside")]
    [InlineData(19, "above the usual")]
    [InlineData(23, "above what this wire bears")]
    public void The_shops_own_tension_is_judged_against_the_band(double gramForce, string word) =>
        Assert.Contains(
            word,
            TensionAdvice.For(Example.Model.Coils[0].Wire, gramForce * TensionBand.NewtonPerGramForce).Words,
            StringComparison.Ordinal
        );

    private static WindingSetUp For(double roomC, double maxBuildM = 4.3e-3)
    {
        Figure any = Example.Figure("dcResistance", "Ω", 6180, 0.08);
        Prediction prediction = new(
            [Example.Forecast],
            new PickupForecast
            {
                DcResistance = any,
                Inductance = any,
                Capacitance = any,
                Spectrum = [],
                HumEffectiveArea = any,
                HumResidual = any,
                HumGradient = [],
            },
            []
        );
        Physics.CoilModel coil = Example.Model.Coils[0];
        return WindingSetUp.For(
            RecipeReader.Read(RecipeText).Value!,
            Example.Model with
            {
                Coils = [coil with { Bobbin = coil.Bobbin with { MaxBuildM = maxBuildM } }],
            },
            prediction,
            "Winder 2",
            roomC
        );
    }
}
