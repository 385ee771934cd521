using System.Numerics;
using Coilwright.Physics.BoundaryElements;
using static Coilwright.Physics.Tests.BoundaryElements.FieldCases;

namespace Coilwright.Physics.Tests.BoundaryElements;

public sealed class CoreInvariantTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void Permeability_one_without_conduction_is_air()
    {
        FieldSolution solution = Fast.Solve(One(Coil(0.02975, Rods(SixM, 1)), 1000), Cancel);
        Assert.Equal(solution.AirInductanceH[0, 0], solution.StaticInductanceH[0, 0], 1e-15 * solution.AirInductanceH[0, 0]);
        Assert.Equal(solution.AirInductanceH[0, 0], solution.SpectrumH[0][0, 0].Real, 1e-15 * solution.AirInductanceH[0, 0]);
    }

    // Finite elements at permeability 1.05 gain 5.4211e-11 H per turn squared on one rod (rods.csv less air.csv, derived, good to 0.9 %);
    // the demagnetising field of 5 % susceptibility takes half a per cent off, which a hundred-thousandth does not.
    [Fact]
    public void Weakly_magnetic_rod_gains_in_proportion_to_its_susceptibility()
    {
        FieldSolution solution = Accurate.Solve(One(Coil(0, Rods([0], 1.00001))), Cancel);
        double gain = solution.StaticInductanceH[0, 0] - solution.AirInductanceH[0, 0];
        Assert.Equal(1, gain / (1e-5 * 5.4211e-11 / 0.05 * 1.005), 0.012);
    }

    [Fact]
    public void Lengths_times_s_give_inductance_times_s() =>
        Gen.Double[0.5, 2]
            .ForAll(
                s =>
                {
                    FieldSolution one = Fast.Solve(One(Coil(0.02975, Rods(SixM, 50))), Cancel);
                    FieldCoil larger = new(
                        Former(s * 0.02975, s * 0.00325, s * 0.011),
                        s * 0.003,
                        1,
                        1,
                        default,
                        [Rods([.. SixM.Select(x => s * x)], 50, 0, s * 0.0024, s * 0.018, s * 0.009)]
                    );
                    FieldSolution other = Fast.Solve(One(larger), Cancel);
                    return Math.Abs(other.StaticInductanceH[0, 0] / (s * one.StaticInductanceH[0, 0]) - 1) < 1e-6
                        && Math.Abs(other.EffectiveAreaM2[0] / (s * s * one.EffectiveAreaM2[0]) - 1) < 1e-6;
                },
                count: 5
            );

    [Fact]
    public void Inductance_goes_with_turns_squared_and_area_with_turns_and_sign()
    {
        FieldSolution one = Fast.Solve(One(Coil(0.02975, Rods(SixM, 50, 6e6)), 1000), Cancel);
        FieldSolution many = Fast.Solve(One(Coil(0.02975, Rods(SixM, 50, 6e6)) with { Turns = 7000, Sign = -1 }, 1000), Cancel);
        Assert.Equal(4.9e7, many.StaticInductanceH[0, 0] / one.StaticInductanceH[0, 0], 1);
        Assert.Equal(4.9e7, many.SpectrumH[0][0, 0].Imaginary / one.SpectrumH[0][0, 0].Imaginary, 1);
        Assert.Equal(-7000, many.EffectiveAreaM2[0] / one.EffectiveAreaM2[0], 1e-6);
    }

    [Fact]
    public void Matrix_of_two_coils_is_symmetric_positive_definite_and_follows_the_winding_sign()
    {
        double[,] alike = Fast.Solve(TwoCoils(4.5), Cancel).StaticInductanceH,
            opposed = Fast.Solve(TwoCoils(4.5, -1), Cancel).StaticInductanceH;
        Assert.Equal(alike[0, 1], alike[1, 0], 1e-20);
        Assert.Equal(alike[0, 0], alike[1, 1], 1e-6 * alike[0, 0]); // the two sides are mirror images of each other
        Assert.True(alike[0, 0] * alike[1, 1] > alike[0, 1] * alike[1, 0]);
        Assert.Equal(-alike[0, 1], opposed[0, 1], 1e-12 * Math.Abs(alike[0, 1]));
    }

    [Fact]
    public void Linkage_of_the_cores_is_the_same_both_ways()
    {
        // One winding with rods, another without: what the rods carry from one to the other must not depend on which one drives.
        FieldCoil with = Coil(0.02975, Rods(SixM, 100)),
            without = Coil(0.02975) with { Position = new Vector3M(0, 0.016, 0.001) };
        double one = Accurate.Solve(new FieldProblem([with, without], [], [], []), Cancel).StaticInductanceH[0, 1];
        double other = Accurate.Solve(new FieldProblem([without, with], [], [], []), Cancel).StaticInductanceH[0, 1];
        Assert.Equal(one, other, 1e-9 * Math.Abs(one));
    }

    [Fact]
    public void Mirror_image_has_the_same_inductance_and_symmetry_is_only_a_shortcut()
    {
        double[] uneven = [-0.026, -0.0156, -0.0052, 0.0052, 0.0156];
        double left = Fast.Solve(One(Coil(0.02975, Rods(uneven, 100))), Cancel).StaticInductanceH[0, 0];
        double right = Fast.Solve(One(Coil(0.02975, Rods([.. uneven.Select(x => -x)], 100))), Cancel).StaticInductanceH[0, 0];
        Assert.Equal(left, right, 1e-9 * left);
        // A far, tiny rod breaks the symmetry and must change next to nothing.
        double even = Fast.Solve(One(Coil(0.02975, Rods(SixM, 100))), Cancel).StaticInductanceH[0, 0];
        double broken = Fast.Solve(
            One(Coil(0.02975, Rods(SixM, 100), Rods([0.2], 100, radius: 0.0001, length: 0.001))),
            Cancel
        ).StaticInductanceH[0, 0];
        Assert.Equal(even, broken, 1e-6 * even);
    }

    [Fact]
    public void Spectrum_starts_at_the_static_inductance()
    {
        FieldProblem problem = TwoCoils(4.5) with { FrequenciesHz = [1e-3] };
        FieldSolution solution = Fast.Solve(problem, Cancel);
        Assert.Equal(1, solution.SpectrumH[0][0, 0].Real / solution.StaticInductanceH[0, 0], 1e-5);
        Assert.Equal(1, solution.SpectrumH[0][0, 1].Real / solution.StaticInductanceH[0, 1], 1e-5);
    }

    // Projected against itself with twice the directions would prove little; against many single materials it proves the mixing:
    // three equal materials written as three parts must give the spectrum of one.
    [Fact]
    public void Equal_materials_written_apart_give_the_spectrum_of_one()
    {
        Complex one = Fast.Solve(One(Coil(0.02975, Rods(SixM, 100, 6e6)), 3000), Cancel).SpectrumH[0][0, 0];
        Complex apart = Fast.Solve(
            One(Coil(0.02975, Rods(SixM[..2], 100, 6e6), Rods(SixM[2..4], 100.0001, 6e6), Rods(SixM[4..], 100.0002, 6e6)), 3000),
            Cancel
        ).SpectrumH[0][0, 0];
        Assert.Equal(1, apart.Real / one.Real, 2e-4);
        Assert.Equal(1, apart.Imaginary / one.Imaginary, 2e-3);
    }

    [Fact]
    public void Eddy_currents_never_give_energy_back() =>
        Gen.Select(Gen.Double[1, 500], Gen.Double[1e5, 1e7], Gen.Double[20, 20000])
            .ForAll(
                (mu, sigma, hz) => Fast.Solve(One(Coil(0.02975, Rods(SixM, mu, sigma)), hz), Cancel).SpectrumH[0][0, 0].Imaginary < 0,
                count: 30
            );

    // A blade as wide as its row of touching squares carries at least the flux of round rods of its thickness in it, and no more than it
    // has section for.
    [Fact]
    public void Blade_gains_more_than_the_rods_that_fit_in_it()
    {
        PoleModel blade = Rods([0], 100) with { Shape = PoleShape.Blade, DiameterM = 0.003, WidthM = 0.058 };
        double rods = Fast.Solve(One(Coil(0.02975, Rods(SixM, 100, radius: 0.0015))), Cancel).StaticInductanceH[0, 0];
        FieldSolution solution = Fast.Solve(One(Coil(0.02975, blade)), Cancel);
        Assert.InRange(solution.StaticInductanceH[0, 0], 1.1 * rods, 4 * solution.AirInductanceH[0, 0]);
        Assert.Equal(1, solution.StaticInductanceH[0, 0] / Accurate.Solve(One(Coil(0.02975, blade)), Cancel).StaticInductanceH[0, 0], 0.03);
    }

    [Fact]
    public void Uncertain_permeability_widens_the_interval()
    {
        PoleModel certain = Rods(SixM, 100),
            uncertain = certain with { RelativePermeability = new Estimate(100, 40, 300, Basis.Assumed) };
        FieldSolution narrow = Fast.Solve(One(Coil(0.02975, certain)), Cancel),
            wide = Fast.Solve(One(Coil(0.02975, uncertain)), Cancel);
        double low = Fast.Solve(One(Coil(0.02975, Rods(SixM, 40))), Cancel).StaticInductanceH[0, 0];
        double high = Fast.Solve(One(Coil(0.02975, Rods(SixM, 300))), Cancel).StaticInductanceH[0, 0];
        double model = narrow.InductanceSpreadH[0, 0],
            half = (high - low) / 2;
        Assert.Equal(Math.Sqrt(model * model + half * half), wide.InductanceSpreadH[0, 0], 1e-6 * half);
    }
}
