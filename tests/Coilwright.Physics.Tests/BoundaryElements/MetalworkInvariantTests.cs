using System.Numerics;
using Coilwright.Physics.BoundaryElements;
using CsCheck;
using static Coilwright.Physics.Tests.BoundaryElements.FieldCases;

namespace Coilwright.Physics.Tests.BoundaryElements;

public sealed class MetalworkInvariantTests
{
    private const double Sigma = 3.4e6;
    private static readonly double[] s_hz = [100, 1000, 5000, 20_000];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static SheetModel Cover(double sigma, double thickness = 0.0005, double scale = 1) =>
        new()
        {
            Shape = SheetShape.Cover,
            Material = "test",
            ThicknessM = thickness * scale,
            LengthM = 0.078 * scale,
            WidthM = 0.022 * scale,
            TopM = 0.0105 * scale,
            BottomM = -0.006 * scale,
            RelativePermeability = Estimate.Exact(1),
            ConductivitySPerM = Estimate.Exact(sigma),
        };

    private static FieldSolution Solve(double sigma, double thickness = 0.0005, params PoleModel[] poles) =>
        Fast.Solve(One(Coil(0.02975, poles), s_hz) with { Sheets = [Cover(sigma, thickness)] }, Cancel);

    [Fact]
    public void Without_conduction_a_cover_is_not_there()
    {
        FieldSolution bare = Fast.Solve(One(Coil(0.02975, Rods(SixM, 4.5, 2e6)), s_hz), Cancel),
            none = Solve(0, 0.0005, Rods(SixM, 4.5, 2e6)),
            little = Solve(1e-3, 0.0005, Rods(SixM, 4.5, 2e6));
        for (int k = 0; k < s_hz.Length; k++)
        {
            Assert.Equal(bare.SpectrumH[k][0, 0], none.SpectrumH[k][0, 0]);
            // The sheets' currents come into the sweep's projection, so that it may move by its own error.
            Assert.Equal(bare.SpectrumH[k][0, 0].Real, little.SpectrumH[k][0, 0].Real, 1e-4 * bare.SpectrumH[k][0, 0].Real);
        }
    }

    [Fact]
    public void Loss_at_low_frequency_goes_with_conductivity_thickness_and_frequency_squared()
    {
        double Ohm(double sigma, double thickness, int k) => -2 * Math.PI * s_hz[k] * Solve(sigma, thickness).SpectrumH[k][0, 0].Imaginary;
        double reference = Ohm(Sigma / 100, 0.0002, 0);
        Assert.Equal(2, Ohm(Sigma / 50, 0.0002, 0) / reference, 1e-3);
        Assert.Equal(2, Ohm(Sigma / 100, 0.0004, 0) / reference, 0.04); // the wall's middle moves with the thickness
        Assert.Equal(100, Ohm(Sigma / 100, 0.0002, 1) / reference, 0.1);
    }

    [Fact]
    public void Perfect_conductor_takes_inductance_but_no_power()
    {
        FieldSolution solution = Solve(1e16, 1e-5);
        double low = solution.SpectrumH[1][0, 0].Real,
            high = solution.SpectrumH[3][0, 0].Real;
        Assert.Equal(low, high, 1e-4 * low);
        Assert.True(low < 0.9 * solution.AirInductanceH[0, 0]);
        Assert.True(Math.Abs(solution.SpectrumH[3][0, 0].Imaginary) < 1e-3 * high);
    }

    [Fact]
    public void Lengths_times_s_and_conductivity_over_s_squared_give_inductance_times_s()
    {
        const double S = 1.7;
        FieldCoil big = new(Former(0.02975 * S, 0.00325 * S, 0.011 * S), 0.003 * S, 1, 1, default, []);
        FieldSolution one = Solve(Sigma),
            other = Fast.Solve(One(big, s_hz) with { Sheets = [Cover(Sigma / (S * S), 0.0005, S)] }, Cancel);
        for (int k = 0; k < s_hz.Length; k++)
        {
            Complex ratio = other.SpectrumH[k][0, 0] / one.SpectrumH[k][0, 0];
            Assert.Equal(S, ratio.Real, 1e-9);
            Assert.Equal(0, ratio.Imaginary, 1e-9);
        }
    }

    [Fact]
    public void Turning_everything_by_a_right_angle_changes_nothing()
    {
        SheetModel along = Cover(Sigma),
            across = along with { LengthM = along.WidthM, WidthM = along.LengthM };
        FieldCoil coil = Coil(0.02975),
            turned = coil with { Bobbin = Former(0, 0.00325, 0.011, 0.02975) };
        Complex one = Fast.Solve(One(coil, 5000) with { Sheets = [along] }, Cancel).SpectrumH[0][0, 0];
        Complex other = Fast.Solve(One(turned, 5000) with { Sheets = [across] }, Cancel).SpectrumH[0][0, 0];
        Assert.Equal(one.Real, other.Real, 1e-6 * one.Real);
        Assert.Equal(one.Imaginary, other.Imaginary, 1e-4 * Math.Abs(one.Imaginary));
    }

    [Fact]
    public void Loss_is_never_negative_and_mutuals_are_equal_both_ways()
    {
        Gen.Select(Gen.Double[-0.008, 0.008], Gen.Double[0.009, 0.012], Gen.Double[1e5, 6e7], Gen.Double[0.0002, 0.001], Gen.Int[-1, 1])
            .ForAll(
                (x, y, sigma, thickness, sign) =>
                {
                    FieldCoil first = new(Former(0.015, 0.003, 0.007), 0.003, 1, 1, new Vector3M(x, -y, 0), []);
                    FieldCoil second = new(
                        Former(0.015, 0.003, 0.007),
                        0.003,
                        1,
                        sign == 0 ? -1 : sign,
                        new Vector3M(-0.5 * x, y, 0.001),
                        []
                    );
                    SheetModel cover = Cover(sigma, thickness) with { LengthM = 0.075, WidthM = 0.05, TopM = 0.0065, CornerM = 0.004 };
                    foreach (Complex[,] m in Fast.Solve(new FieldProblem([first, second], [], [cover], s_hz), default).SpectrumH)
                    {
                        Assert.Equal(0, (m[0, 1] - m[1, 0]).Magnitude, 1e-9 * m[0, 0].Real);
                        double r11 = -m[0, 0].Imaginary,
                            r22 = -m[1, 1].Imaginary,
                            r12 = -m[0, 1].Imaginary;
                        Assert.True(r11 > 0 && r22 > 0 && r11 * r22 - r12 * r12 >= -1e-9 * r11 * r22);
                    }
                },
                count: 12
            );
    }

    [Fact]
    public void Two_opposed_coils_under_one_cover_lose_power_though_no_net_flux_leaves_it()
    {
        FieldProblem problem = TwoCoils(1, -1) with
        {
            Sheets = [Cover(Sigma) with { WidthM = 0.038, TopM = 0.0075 }],
            FrequenciesHz = [3000],
        };
        Complex[,] m = Fast.Solve(problem, Cancel).SpectrumH[0];
        double together = -(m[0, 0] + m[1, 1] + 2 * m[0, 1]).Imaginary,
            alone = -m[0, 0].Imaginary;
        Assert.True(together > alone);
        Assert.Equal(m[0, 0].Imaginary, m[1, 1].Imaginary, 1e-3 * alone);
    }

    [Fact]
    public void What_conductivity_does_is_the_slope_of_the_spectrum()
    {
        const double Step = 1e-3;
        FieldSolution low = Solve(Sigma * (1 - Step)),
            middle = Solve(Sigma),
            high = Solve(Sigma * (1 + Step));
        for (int k = 0; k < s_hz.Length; k++)
        {
            Complex slope = (high.SpectrumH[k][0, 0] - low.SpectrumH[k][0, 0]) / (2 * Step),
                stated = Assert.Single(middle.SheetEffects).ByConductivityH[k][0, 0];
            Assert.True((slope - stated).Magnitude < 0.02 * stated.Magnitude, $"{s_hz[k]} Hz: {slope} against {stated}");
        }
    }

    [Fact]
    public void Poles_through_the_cover_cut_its_currents()
    {
        double Loss(double top) =>
            -Fast.Solve(One(Coil(0.02975, Rods(SixM, 1.0001, 0, length: 0.018, top: top)), 1000) with { Sheets = [Cover(Sigma)] }, Cancel)
                .SpectrumH[0][0, 0]
                .Imaginary;
        double whole = Loss(0.0098),
            holed = Loss(0.0115);
        Assert.InRange(holed / whole, 0.75, 0.999);
    }
}
