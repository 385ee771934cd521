using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Tests.Forecasts;

public sealed class ForecasterTests
{
    private static PickupModel Pickup(
        Bobbin bobbin,
        double turns,
        double? buildM = null,
        Connection connection = Connection.Single,
        int coils = 1
    ) =>
        new()
        {
            Connection = connection,
            Coils =
            [
                .. Enumerable
                    .Range(0, coils)
                    .Select(c => new CoilModel
                    {
                        Name = "coil",
                        Bobbin = bobbin,
                        Wire = WireCatalogue.Standard.ModelFor("AWG 42", "single", "plain-enamel"),
                        Winding = new WindingModel
                        {
                            Turns = turns,
                            MeasuredBuildM = buildM,
                            Direction = c == 0 ? WindingDirection.CounterClockwise : WindingDirection.Clockwise,
                        },
                        Position = new Vector3M(0, c * 0.018, 0),
                    }),
            ],
        };

    private static readonly Bobbin Racetrack = new()
    {
        CoreLengthM = 0.066,
        CoreWidthM = 0.0065,
        EndRadiusM = 0.00325,
        WindingHeightM = 0.011,
        MaxBuildM = 0.0043,
    };
    private static readonly LoadCircuit Load = new()
    {
        Volume = new(500e3, 1),
        Tone = new(500e3, 22e-9, 1),
        CableCapacitanceF = 500e-12,
        InputResistanceOhm = 1e6,
    };

    // Racetrack and round coil from independent filament and finite-element solutions (derived, estimated error 2e-5), with the build
    // measured.
    [Theory]
    [InlineData(0.066, 0.00325, 0.011, 0.003, 8000, 2.160141817515078)]
    [InlineData(0.0065, 0.00325, 0.011, 0.003, 5000, 0.11188578924318704)]
    public void Air_coils_come_out_within_half_a_per_cent(
        double length,
        double radius,
        double height,
        double build,
        double turns,
        double expected
    )
    {
        Bobbin bobbin = new()
        {
            CoreLengthM = length,
            CoreWidthM = 2 * radius,
            EndRadiusM = radius,
            WindingHeightM = height,
        };
        Prediction prediction = Forecaster.Predict(Pickup(bobbin, turns, build), null, cancel: TestContext.Current.CancellationToken);
        Assert.Equal(1, prediction.Coils[0].AirInductance.Value / expected, 0.005);
        Assert.Equal(prediction.Coils[0].AirInductance.Value, prediction.Pickup.Inductance.Value, 1e-9);
    }

    [Fact] // its packing's upper limit, put symmetrically, lies above what nested layers reach
    public void An_even_lay_without_a_pitch_is_foretold()
    {
        PickupModel pickup = Pickup(Racetrack, 7000);
        Prediction prediction = Forecaster.Predict(
            pickup with
            {
                Coils =
                [
                    pickup.Coils[0] with
                    {
                        Winding = new WindingModel { Turns = 7000, Lay = Lay.Even },
                    },
                ],
            },
            null,
            cancel: TestContext.Current.CancellationToken
        );
        Assert.InRange(prediction.Coils[0].Build.Value, 0.002, 0.004);
    }

    // Decision 2: first order and sampling run one function; 6,000 draws place a 2.5 % point to about 3.5 % of the half-width.
    [Fact]
    public void First_order_and_sampled_intervals_agree_for_every_result()
    {
        IReadOnlyDictionary<string, (Estimate FirstOrder, Estimate Sampled)> pairs = Forecaster.CompareIntervals(
            Pickup(Racetrack, 8000),
            Load,
            samples: 6000,
            seed: 3,
            TestContext.Current.CancellationToken
        );
        Assert.All(pairs.Where(pair => !pair.Value.FirstOrder.IsExact), pair =>
            Assert.Equal(
                1,
                (pair.Value.Sampled.High - pair.Value.Sampled.Low) / (pair.Value.FirstOrder.High - pair.Value.FirstOrder.Low),
                0.15
            )
        );
    }

    [Fact]
    public void Every_figure_holds_its_value_inside_its_interval_and_names_what_to_measure()
    {
        Prediction prediction = Forecaster.Predict(Pickup(Racetrack, 8000), Load, cancel: TestContext.Current.CancellationToken);
        Assert.All(prediction.Coils[0].All.Concat(prediction.Pickup.All), figure =>
        {
            Assert.True(
                double.IsFinite(figure.Value) && figure.Estimate.Low <= figure.Value && figure.Value <= figure.Estimate.High,
                figure.Name
            );
            Assert.Equal(figure.Estimate.IsExact, figure.Derivation.NarrowBy is null);
        });
        Assert.Equal("bare diameter of AWG 42", prediction.Coils[0].DcResistance.Derivation.NarrowBy);
    }

    // Side by side and wound against each other: currents add the mutual flux, so L = 2(L1 + |M|) in series.
    [Fact]
    public void Two_coils_in_series_add_their_mutual_inductance_by_winding_sign()
    {
        Prediction one = Forecaster.Predict(Pickup(Racetrack, 5000, 0.003), null, cancel: TestContext.Current.CancellationToken);
        Prediction two = Forecaster.Predict(
            Pickup(Racetrack, 5000, 0.003, Connection.Series, coils: 2),
            null,
            cancel: TestContext.Current.CancellationToken
        );
        double k = two.Pickup.Coupling!.Value;
        Assert.InRange(k, 0.05, 0.2);
        Assert.Equal(2 * (1 + k), two.Pickup.Inductance.Value / one.Pickup.Inductance.Value, 1e-6);
        Assert.Equal(2, two.Pickup.DcResistance.Value / one.Pickup.DcResistance.Value, 1e-9);
        Assert.Equal(0, two.Pickup.HumEffectiveArea.Value, 1e-9);
    }

    [Fact]
    public void A_coil_too_thick_for_its_bobbin_says_so()
    {
        Prediction prediction = Forecaster.Predict(Pickup(Racetrack, 12000), null, cancel: TestContext.Current.CancellationToken);
        Assert.Contains(prediction.Warnings, warning =>
            warning.Field == "coils[0].winding.turns" && warning.Message.Contains("does not fit", StringComparison.Ordinal)
        );
    }
}
