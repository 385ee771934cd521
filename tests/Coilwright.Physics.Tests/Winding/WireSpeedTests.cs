using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Tests.Winding;

public sealed class WireSpeedTests
{
    private static readonly Bobbin s_long = new()
    {
        CoreLengthM = 64e-3,
        CoreWidthM = 6.2e-3,
        EndRadiusM = 3.1e-3,
        WindingHeightM = 11e-3,
    };

    /// <summary>Cauchy: the mean of the lever over a turn is the perimeter ÷ 2π.</summary>
    [Theory]
    [InlineData(64e-3, 6.2e-3, 3.1e-3, 0)]
    [InlineData(64e-3, 6.2e-3, 3.1e-3, 3e-3)]
    [InlineData(40e-3, 20e-3, 2e-3, 1e-3)]
    public void A_turn_takes_up_its_own_length(double lengthM, double widthM, double radiusM, double outM)
    {
        Bobbin bobbin = s_long with { CoreLengthM = lengthM, CoreWidthM = widthM, EndRadiusM = radiusM };
        const int Steps = 100_000;
        double takenM =
            Enumerable.Range(0, Steps).Sum(step => WireSpeed.LeverM(bobbin, outM, 2 * Math.PI * (step + 0.5) / Steps))
            * 2
            * Math.PI
            / Steps;
        Assert.Equal(bobbin.TurnLengthM(outM), takenM, 1e-9);
    }

    /// <summary>
    /// A different method: the free wire to a far guide is shortened by the core's farthest point across it, found among points on the
    /// outline.
    /// </summary>
    [Fact]
    public void The_lever_is_the_farthest_point_of_the_outline_across_the_wire() =>
        Gen.Double[0, 2 * Math.PI]
            .ForAll(
                angle =>
                {
                    double half = s_long.LongStraightM / 2,
                        r = s_long.EndRadiusM,
                        farthest = 0;
                    for (int step = 0; step < 20_000; step++)
                    {
                        double t = 2 * Math.PI * step / 20_000,
                            x = (Math.Cos(t) >= 0 ? half : -half) + r * Math.Cos(t),
                            y = r * Math.Sin(t);
                        farthest = Math.Max(farthest, x * Math.Cos(angle) + y * Math.Sin(angle));
                    }

                    Assert.Equal(farthest, WireSpeed.LeverM(s_long, 0, angle), 1e-9);
                },
                count: 50
            );

    [Fact]
    public void A_round_core_does_not_pulse_and_a_long_one_pulses_ten_to_one()
    {
        Assert.Equal(1, WireSpeed.Ratio(s_long with { CoreLengthM = 10e-3, CoreWidthM = 10e-3, EndRadiusM = 5e-3 }, 1e-3), 1e-12);
        Assert.Equal(32 / 3.1, WireSpeed.Ratio(s_long, 0), 1e-9); // half length over half width
    }
}
