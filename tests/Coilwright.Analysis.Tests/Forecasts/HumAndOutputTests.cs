using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Strings;
using Coilwright.Physics.Winding;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Tests.Forecasts;

/// <summary>Hum left of a pair, and the strings' part of a prediction.</summary>
public sealed class HumAndOutputTests
{
    [Theory] // arithmetic: the difference of the turns over their sum
    [InlineData(5010, -60)]
    [InlineData(5050, -46)]
    [InlineData(5150, -37)]
    [InlineData(5500, -26)]
    public void Unequal_turns_leave_the_hum_that_arithmetic_gives(double turns, double db)
    {
        PickupForecast pickup = Predict(Pair(turns, opposed: true)).Pickup;
        Assert.Equal(db, pickup.HumResidual.Value, 0.5);
        Assert.InRange(pickup.HumResidual.Value, pickup.HumResidual.Estimate.Low, pickup.HumResidual.Estimate.High);
    }

    [Fact]
    public void Coils_wound_alike_add_their_hum_and_a_single_coil_keeps_all_of_its_own()
    {
        Assert.Equal(0, Predict(Pair(5000, opposed: false)).Pickup.HumResidual.Value, 1e-9);
        PickupModel pair = Pair(5000, opposed: true);
        Assert.Equal(0, Predict(pair with { Coils = [pair.Coils[0]], Connection = Connection.Single }).Pickup.HumResidual.Value, 1e-9);
    }

    [Fact] // rods of steel in one coil alone make its area larger by the cores' factor
    public void Unequal_cores_leave_hum_at_equal_turns()
    {
        PickupModel pair = Pair(5000, opposed: true);
        PickupModel mixed = pair with
        {
            Coils = [pair.Coils[0], pair.Coils[1] with { Poles = [.. pair.Coils[1].Poles.Select(pole => pole with { DiameterM = 3e-3 })] }],
        };
        Assert.InRange(Predict(mixed).Pickup.HumResidual.Value, -40, -6);
    }

    [Fact]
    public void Output_follows_winding_sign_times_magnet_sign()
    {
        double Of(int direction, int magnet)
        {
            PickupModel pair = Pair(5000, opposed: false);
            CoilModel coil = pair.Coils[0] with
            {
                Winding = pair.Coils[0].Winding with
                {
                    Direction = direction > 0 ? WindingDirection.CounterClockwise : WindingDirection.Clockwise,
                },
                Poles = [.. pair.Coils[0].Poles.Select(pole => pole with { PolarisationT = Estimate.Exact(0.3 * magnet) })],
            };
            return Predict(pair with { Coils = [coil], Connection = Connection.Single }).Pickup.Strings[2].Sensitivity.Value;
        }

        Assert.True(Of(1, 1) > 0);
        Assert.Equal(-Of(1, 1), Of(-1, 1), 1e-9 * Of(1, 1));
        Assert.Equal(-Of(1, 1), Of(1, -1), 1e-9 * Of(1, 1));
        Assert.Equal(Of(1, 1), Of(-1, -1), 1e-9 * Of(1, 1));
    }

    [Fact] // 20·log10 of the turns ratio: output goes with turns where the build is given
    public void Ten_per_cent_more_turns_are_0_83_dB_more_output()
    {
        PickupModel pair = Pair(5000, opposed: false);
        double At(double turns) =>
            Predict(
                pair with
                {
                    Connection = Connection.Single,
                    Coils = [pair.Coils[0] with { Winding = pair.Coils[0].Winding with { Turns = turns, MeasuredBuildM = 4e-3 } }],
                }
            )
                .Pickup.Strings[2]
                .Sensitivity.Value;
        double db = 20 * Math.Log10(At(11_000) / At(10_000));
        Assert.Equal(0.828, db, 0.001);
    }

    [Fact]
    public void Nearer_strings_are_louder_and_the_interval_holds_the_steels_share()
    {
        PickupModel pair = Pair(5000, opposed: true);
        Figure near = Predict(pair with { Strings = pair.Strings! with { ClearanceM = 2e-3 } }).Pickup.Strings[0].Sensitivity,
            far = Predict(pair with { Strings = pair.Strings! with { ClearanceM = 3e-3 } }).Pickup.Strings[0].Sensitivity;
        Assert.True(Math.Abs(near.Value) > 1.2 * Math.Abs(far.Value));
        Assert.InRange((near.Estimate.High - near.Estimate.Low) / 2 / Math.Abs(near.Value), 0.25, 0.6);
        Assert.Contains(near.Derivation.Inputs, input => input.Name == "string steel");
    }

    private static Prediction Predict(PickupModel model) =>
        Forecaster.Predict(model, load: null, cancel: TestContext.Current.CancellationToken);

    private static PickupModel Pair(double secondTurns, bool opposed)
    {
        double[] six = [-0.026, -0.0156, -0.0052, 0.0052, 0.0156, 0.026];
        CoilModel Coil(string name, double turns, double y, WindingDirection direction, double source) =>
            new()
            {
                Name = name,
                Bobbin = new Bobbin
                {
                    CoreLengthM = 0.061,
                    CoreWidthM = 0.0062,
                    EndRadiusM = 0.0031,
                    WindingHeightM = 0.0065,
                },
                Wire = WireCatalogue.Standard.ModelFor("AWG 42", "single", "plain-enamel"),
                Winding = new WindingModel
                {
                    Turns = turns,
                    Direction = direction,
                    MeasuredBuildM = 4e-3,
                },
                Position = new Vector3M(0, y, 0),
                Poles =
                [
                    new PoleModel
                    {
                        Shape = PoleShape.Rod,
                        Material = "test",
                        DiameterM = 4.75e-3,
                        LengthM = 0.012,
                        PositionsM = six,
                        TopsM = [.. six.Select(_ => 0.005)],
                        RelativePermeability = Estimate.Exact(100),
                        ConductivitySPerM = Estimate.Exact(0),
                        PolarisationT = Estimate.Exact(source),
                    },
                ],
            };
        return new PickupModel
        {
            Coils =
            [
                Coil("one", 5000, -0.0095, WindingDirection.CounterClockwise, 0.3),
                Coil(
                    "two",
                    secondTurns,
                    0.0095,
                    opposed ? WindingDirection.Clockwise : WindingDirection.CounterClockwise,
                    opposed ? -0.3 : 0.3
                ),
            ],
            Connection = Connection.Series,
            Strings = new StringSetModel
            {
                Count = 6,
                SpacingM = 0.0104,
                ClearanceM = 2.5e-3,
                Strings =
                [
                    .. UsualStrings
                        .For(6, 0.0104)
                        .Select(one => new StringModel
                        {
                            CoreDiameterM = one.CoreM,
                            OuterDiameterM = one.OuterM,
                            RelativePermeability = Estimate.Exact(80),
                        }),
                ],
            },
        };
    }
}
