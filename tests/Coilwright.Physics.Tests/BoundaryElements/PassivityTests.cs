using System.Numerics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Tests.BoundaryElements;

/// <summary>No pickup of coils and passive parts gives power, however coarse its cut.</summary>
public sealed class PassivityTests
{
    private static readonly double[] s_hz = [20, 1000, 20_000];

    [Theory] // Long, flat, thin and wide parts, in gaps from wide to none.
    [InlineData(57e-3, 0.25e-3, 280)]
    [InlineData(100e-3, 0.01e-3, 280)]
    [InlineData(20e-3, 0, 1e6)]
    [InlineData(0.5e-3, 0.1e-3, 280)]
    public void Losses_take_power_and_cores_store_more(double lengthM, double gapM, double permeability)
    {
        FieldSolution solution = new FastFieldEngine().Solve(Problem(lengthM, gapM, permeability), TestContext.Current.CancellationToken);
        Assert.True(solution.StaticInductanceH[0, 0] >= solution.AirInductanceH[0, 0]);
        foreach (Complex[,] at in solution.SpectrumH)
        {
            Assert.True(at[0, 0].Real > 0 && at[0, 0].Imaginary <= 0, at[0, 0].ToString());
        }
    }

    [Fact] // without a limit these would be 37,000 panels, 11 GB
    public void Many_thick_bars_are_cut_coarsely_and_it_is_said()
    {
        Estimate mu = Estimate.Exact(100);
        BarModel[] cubes =
        [
            .. Enumerable
                .Range(0, 24)
                .Select(i => new BarModel
                {
                    Material = "low-carbon-steel",
                    SizeM = new(9e-3, 9e-3, 9e-3),
                    CentreM = new((i % 8 - 3.5) * 10e-3, (i / 8 - 1) * 11e-3, -20e-3),
                    RelativePermeability = mu,
                    ConductivitySPerM = Estimate.Exact(0),
                }),
        ];
        FieldSolution solution = new FastFieldEngine().Solve(
            Problem(20e-3, 0.25e-3, 280) with
            {
                Bars = cubes,
            },
            TestContext.Current.CancellationToken
        );
        Assert.True(solution.StaticInductanceH[0, 0] > solution.AirInductanceH[0, 0]);
        Assert.Contains(solution.Notes, note => note.Message.Contains("cut more coarsely", StringComparison.Ordinal));
        Assert.True(solution.InductanceSpreadH[0, 0] > 0.09 * (solution.StaticInductanceH[0, 0] - solution.AirInductanceH[0, 0]));
    }

    [Fact] // the same part cut by the accurate engine: what the stated half-widths of both allow
    public void A_long_screw_beside_a_bar_is_within_the_engines_stated_errors()
    {
        FieldProblem problem = Problem(57e-3, 0.25e-3, 280);
        FieldSolution fast = new FastFieldEngine().Solve(problem, TestContext.Current.CancellationToken),
            accurate = new AccurateFieldEngine().Solve(problem, TestContext.Current.CancellationToken);
        double apart = Math.Abs(fast.StaticInductanceH[0, 0] - accurate.StaticInductanceH[0, 0]),
            cores = accurate.StaticInductanceH[0, 0] - accurate.AirInductanceH[0, 0];
        Assert.True(apart <= (0.025 + 0.03 + 0.006) * cores, $"{apart} of {cores}");
    }

    private static FieldProblem Problem(double lengthM, double gapM, double permeability)
    {
        Estimate mu = Estimate.Exact(permeability),
            conductivity = Estimate.Exact(6e6);
        PoleModel rod = new()
        {
            Shape = PoleShape.Rod,
            Material = "low-carbon-steel",
            DiameterM = 3.5e-3,
            LengthM = lengthM,
            PositionsM = [-15e-3, -5e-3, 5e-3, 15e-3],
            TopsM = [5e-3, 5e-3, 5e-3, 5e-3],
            RelativePermeability = mu,
            ConductivitySPerM = conductivity,
        };
        Bobbin bobbin = new()
        {
            CoreLengthM = 62e-3,
            CoreWidthM = 8e-3,
            EndRadiusM = 4e-3,
            WindingHeightM = 6e-3,
        };
        BarModel Bar(int side) =>
            new()
            {
                Material = "alnico-5",
                SizeM = new(62e-3, 6e-3, 3.2e-3),
                CentreM = new(0, side * (1.75e-3 + gapM + 3e-3), -6.6e-3),
                RelativePermeability = Estimate.Exact(3.6),
                ConductivitySPerM = Estimate.Exact(2e6),
            };
        return new FieldProblem([new FieldCoil(bobbin, 7e-3, 9000, 1, default, [rod])], [Bar(1), Bar(-1)], [], s_hz);
    }
}
