using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Originals;
using Coilwright.Formats.Originals;
using Coilwright.Physics;
using Coilwright.Workshop.Originals;

namespace Coilwright.Formats.Tests.Originals;

/// <summary>What an original was made of.</summary>
public sealed class IdentifyTests
{
    private const string Bobbin =
        "\"bobbin\": { \"coreLength\": \"54 mm\", \"coreWidth\": \"5.6 mm\", \"windingHeight\": \"11 mm\", \"maxBuild\": \"4.6 mm\" }";
    private const string Poles =
        "\"poles\": [ { \"shape\": \"rod\", \"material\": \"alnico-5\", \"diameter\": \"4.75 mm\", \"length\": \"17 mm\", \"count\": 6, "
        + "\"spacing\": \"9.6 mm\", \"top\": \"9 mm\" } ]";

    // Arithmetic: 8.42 kΩ over 0.130 m of mean turn at the nominal Ω/m of each gauge.
    [Theory]
    [InlineData("AWG 42", 11_900)]
    [InlineData("AWG 43", 9_210)]
    [InlineData("AWG 44", 7_610)]
    public void Resistance_and_mean_turn_count_the_turns_of_each_gauge(string gauge, double turns)
    {
        OriginalAnswer answer = Explain(
            $$"""
            { "format": "coilwright.original/1", "bobbin": { "coreLength": "55.52 mm", "coreWidth": "5.6 mm",
              "windingHeight": "11 mm" }, {{Poles}}, "winding": { "build": "4 mm" },
              "wire": { "gauge": "{{gauge}}", "build": "single" }, "readings": [ { "quantity": "dcResistance",
              "value": "8.42 kΩ", "uncertainty": "0.3 %", "temperature": "20 °C" },
              { "quantity": "meanTurnLength", "value": "130 mm", "uncertainty": "0.2 %" },
              { "quantity": "bareDiameter", "value": "{{Nominal(gauge)}}", "uncertainty": "0.1 %" } ] }
            """
        );
        OriginalExplanation only = Assert.Single(answer.Explanations);
        Assert.Equal(turns, only.Turns.Value, 0.01 * turns);
    }

    [Fact]
    public void A_wire_that_does_not_fit_the_window_is_not_believed()
    {
        OriginalAnswer answer = Explain(
            $$"""
            { "format": "coilwright.original/1", {{Bobbin}}, {{Poles}},
              "readings": [ { "quantity": "dcResistance", "value": "8.42 kΩ", "uncertainty": "0.5 %", "temperature": "20 °C" },
              { "quantity": "inductance", "value": "3.55 H", "at": "120 Hz", "uncertainty": "1 %" } ] }
            """
        );
        Assert.True(answer.Converged);
        Assert.Equal(1, answer.Explanations.Sum(one => one.Probability), 1e-9);
        Assert.InRange(answer.ByGauge.GetValueOrDefault("AWG 42"), 0, 0.01);
        Assert.True(answer.ByGauge.GetValueOrDefault("AWG 43") > 0.5, string.Join("; ", answer.ByGauge));
    }

    [Fact]
    public void The_next_reading_offered_first_would_settle_more_than_the_others()
    {
        OriginalAnswer answer = Explain(
            $$"""
            { "format": "coilwright.original/1", {{Bobbin}}, {{Poles}},
              "readings": [ { "quantity": "dcResistance", "value": "6.2 kΩ", "uncertainty": "0.5 %", "temperature": "20 °C" } ] }
            """
        );
        Assert.All(answer.NextReadings.Zip(answer.NextReadings.Skip(1)), pair =>
            Assert.True(pair.First.InformationBits >= pair.Second.InformationBits)
        );
        Assert.True(answer.NextReadings[0].InformationBits > 1);
        Assert.DoesNotContain(answer.NextReadings, next => next.Quantity == OriginalQuantity.DcResistance);
    }

    [Fact]
    public void Readings_that_cannot_go_together_are_told()
    {
        OriginalAnswer answer = Explain(
            $$"""
            { "format": "coilwright.original/1", {{Bobbin}}, {{Poles}},
              "readings": [ { "quantity": "dcResistance", "value": "6.2 kΩ", "uncertainty": "0.5 %", "temperature": "20 °C" },
              { "quantity": "inductance", "value": "30 H", "at": "120 Hz", "uncertainty": "1 %" },
              { "quantity": "overallDiameter", "value": "0.071 mm", "uncertainty": "1 %" } ] }
            """
        );
        Assert.Contains(answer.Warnings, warning => warning.StartsWith("the readings do not go together", StringComparison.Ordinal));
    }

    [Fact]
    public void A_field_given_twice_is_named_with_its_place()
    {
        IReadOnlyList<Coilwright.Workshop.Entry.Problem> problems = OriginalReader
            .Read(
                $$"""
                { "format": "coilwright.original/1", {{Bobbin}}, "wire": { "gauge": "AWG 42", "gauge": "AWG 43" },
                  "poles": [ { "shape": "rod", "diameter": "4.75 mm", "diameter": "5 mm", "length": "17 mm", "count": 6,
                  "spacing": "9.6 mm", "top": "9 mm" } ], "readings": [ { "quantity": "dcResistance", "value": "8.42 kΩ" } ] }
                """
            )
            .Problems;
        Assert.Equal(["poles[0].diameter", "wire.gauge"], problems.Select(problem => problem.Field).Order(StringComparer.Ordinal));
        Assert.All(problems, problem => Assert.Equal("this field is given twice; keep one of them", problem.Message));
    }

    [Fact]
    public void Every_mistake_is_named_with_its_field()
    {
        string[] fields =
        [
            .. OriginalReader
                .Read(
                    """{ "format": "coilwright.original/1", "bobbin": { "coreLength": "61 kg", "windingHeigt": "11 mm" }, "readings": [ """
                        + """{ "quantity": "dcResistance", "value": "8 H" }, { "quantity": "loudness", "value": "1" }, """
                        + """{ "quantity": "inductance", "value": "2 H", "uncertainty": "80 %" } ] }"""
                )
                .Problems.Select(problem => problem.Field),
        ];
        foreach (
            string field in (string[])
                [
                    "bobbin.coreLength",
                    "bobbin.windingHeigt",
                    "readings[0].value",
                    "readings[1].quantity",
                    "readings[2].uncertainty",
                    "readings[2].at",
                ]
        )
        {
            Assert.Contains(field, fields);
        }
    }

    /// <summary>
    /// Simulated originals with known truth: the 95 % interval of the turns holds it about 95 times in 100, and a wire called p % is right
    /// p % of the time.
    /// </summary>
    [Fact]
    public void Intervals_and_probabilities_are_honest_on_simulated_originals()
    {
        const int Cases = 160;
        string[] gauges = ["AWG 41", "AWG 42", "AWG 43", "AWG 44"],
            builds = ["single", "heavy"];
        string roomy = Bobbin.Replace(", \"maxBuild\": \"4.6 mm\"", "", StringComparison.Ordinal);
        Original known = OriginalReader
            .Read(
                $$"""
                { "format": "coilwright.original/1", {{roomy}}, {{Poles}},
                  "readings": [ { "quantity": "dcResistance", "value": "6 kΩ", "temperature": "20 °C" } ] }
                """
            )
            .Value!;
        OriginalCandidate[] candidates =
        [
            .. OriginalCandidates
                .For(known)
                .Where(one => gauges.Contains(one.Gauge) && builds.Contains(one.Build))
                .Select(one => one with { Weight = 1 }),
        ];
        Random random = new(20260411);
        double Normal() => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
        int covered = 0,
            right = 0;
        double claimed = 0;
        for (int i = 0; i < Cases; i++)
        {
            OriginalCandidate truth = candidates[random.Next(candidates.Length)];
            double turns = Math.Exp(Math.Log(7000) + 0.25 * Normal());
            CoilModel coil = truth.Model.Coils[0];
            double bare = coil.Wire.BareDiameterM.Value + Normal() * coil.Wire.BareDiameterM.StandardDeviation,
                overall = coil.Wire.OverallDiameterM.Value + Normal() * coil.Wire.OverallDiameterM.StandardDeviation;
            overall = Math.Max(overall, bare * 1.01);
            PickupModel made = truth.Model with
            {
                Coils =
                [
                    coil with
                    {
                        Winding = coil.Winding with { Turns = turns },
                        Wire = coil.Wire with { BareDiameterM = Estimate.Exact(bare), OverallDiameterM = Estimate.Exact(overall) },
                    },
                ],
            };
            Prediction shown = Forecaster.Predict(
                made,
                null,
                new ForecastOptions { Strings = false, FrequenciesHz = [120, 1000] },
                TestContext.Current.CancellationToken
            );
            double Sigma(Figure figure, double meter) =>
                Math.Sqrt(meter * meter + Math.Pow(figure.Estimate.StandardDeviation / figure.Value, 2));
            OriginalReading[] readings =
            [
                new(
                    OriginalQuantity.DcResistance,
                    shown.Pickup.DcResistance.Value * Math.Exp(Sigma(shown.Pickup.DcResistance, 0.0025) * Normal()),
                    0.005
                ),
                new(
                    OriginalQuantity.Inductance,
                    shown.Pickup.Spectrum[0].Inductance.Value * Math.Exp(Sigma(shown.Pickup.Spectrum[0].Inductance, 0.005) * Normal()),
                    0.01,
                    120
                ),
                new(OriginalQuantity.OverallDiameter, overall * Math.Exp(0.009 * Normal()), 0.018),
            ];
            OriginalAnswer answer = OriginalFinder.Explain(candidates, readings, TestContext.Current.CancellationToken);
            covered += turns >= answer.Turns.Low && turns <= answer.Turns.High ? 1 : 0;
            claimed += answer.Explanations[0].Probability;
            right += answer.Explanations[0].Gauge == truth.Gauge && answer.Explanations[0].Build == truth.Build ? 1 : 0;
        }

        const string Truth = "simulation with known truth, 160 originals, seed 20260411";
        Shared
            .Evidence.Own("Identify: turns within their 95 % interval", Truth, "chance: three standard errors of 160 cases")
            .Inside(100.0 * covered / Cases, 90, 99, "%")
            .Record();
        Shared
            .Evidence.Own("Identify: likeliest wire right, less what was claimed", Truth, "chance: four standard errors of 160 cases")
            .Within(100 * (right - claimed) / Cases, 0, 10, "points")
            .Record(string.Create(CultureInfo.InvariantCulture, $"{100.0 * right / Cases:F0} against {100 * claimed / Cases:F0} %"));
    }

    private static string Nominal(string gauge) =>
        (1e3 * Physics.Wire.WireCatalogue.Standard.Find(gauge)!.Bare.NominalM).ToString("F5", CultureInfo.InvariantCulture) + " mm";

    private static OriginalAnswer Explain(string json)
    {
        Original original = Assert.IsType<Original>(OriginalReader.Read(json).Value);
        return OriginalFinder.Explain(OriginalCandidates.For(original), original.Readings, TestContext.Current.CancellationToken);
    }
}
