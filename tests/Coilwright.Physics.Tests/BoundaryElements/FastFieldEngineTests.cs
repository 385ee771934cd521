using System.Numerics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Tests.BoundaryElements;

public sealed class FastFieldEngineTests
{
    private static FieldProblem Case(double straightHalf, double[] rods, double mu, double conductivity = 0, params double[] frequencies)
    {
        Bobbin bobbin = new()
        {
            CoreLengthM = 2 * (straightHalf + 0.00325),
            CoreWidthM = 0.0065,
            EndRadiusM = 0.00325,
            WindingHeightM = 0.011,
        };
        PoleModel pole = new()
        {
            Shape = PoleShape.Rod,
            Material = "test",
            DiameterM = 0.0048,
            LengthM = 0.018,
            PositionsM = rods,
            TopsM = [.. rods.Select(_ => 0.009)],
            RelativePermeability = Estimate.Exact(mu),
            ConductivitySPerM = Estimate.Exact(conductivity),
        };
        return new FieldProblem([new FieldCoil(bobbin, 0.003, 1, 1, default, rods.Length > 0 ? [pole] : [])], [], [], frequencies);
    }

    private static readonly double[] Six = [-0.026, -0.0156, -0.0052, 0.0052, 0.0156, 0.026];

    // Rods in a round and in a long coil: finite-element solutions (derived, estimated error 1e-4 to 5e-4):
    // the truth must lie inside the interval that the engine states.
    [Theory]
    [InlineData(false, 1.05, 4.529642437628781e-9)]
    [InlineData(false, 4.5, 7.551503241128007e-9)]
    [InlineData(false, 500, 2.031396964814558e-8)]
    [InlineData(true, 1.05, 3.395807599092757e-8)]
    [InlineData(true, 4.5, 4.4798550437506624e-8)]
    [InlineData(true, 100, 7.72409545122047e-8)]
    public void Cored_inductance_lies_inside_its_own_interval(bool six, double mu, double expected)
    {
        FieldSolution solution = new FastFieldEngine().Solve(
            Case(six ? 0.02975 : 0, six ? Six : [0], mu),
            TestContext.Current.CancellationToken
        );
        double found = solution.StaticInductanceH[0, 0];
        Assert.True(
            Math.Abs(found - expected) <= solution.InductanceSpreadH[0, 0] + 0.001 * expected,
            FormattableString.Invariant($"found {found}, expected {expected}, {found / expected - 1:P2}")
        );
    }

    [Fact]
    public void Permeability_one_is_air()
    {
        FieldSolution solution = new FastFieldEngine().Solve(Case(0.02975, Six, 1), TestContext.Current.CancellationToken);
        Assert.Equal(solution.AirInductanceH[0, 0], solution.StaticInductanceH[0, 0], 1e-15);
    }

    // Long cylinder in an axial field (closed form; values derived to four digits): µ 280, 1/0.16 µΩ·m, radius 2.4 mm.
    [Theory]
    [InlineData(120, 0.4811, -0.3542)]
    [InlineData(1000, 0.1588, -0.1457)]
    [InlineData(10000, 0.0501, -0.0489)]
    public void Effective_permeability_matches_the_closed_form(double hz, double real, double imaginary)
    {
        Complex ratio = SkinEffect.Permeability(280, 1 / 1.6e-7, SkinShape.Cylinder, 0.0024, hz) / 280;
        Assert.Equal(real, ratio.Real, 0.00006);
        Assert.Equal(imaginary, ratio.Imaginary, 0.00006);
    }

    [Fact]
    public void Eddy_currents_lower_the_inductance_and_add_resistance()
    {
        FieldSolution solution = new FastFieldEngine().Solve(
            Case(0, [0], 100, 6e6, 100, 1000, 20000),
            TestContext.Current.CancellationToken
        );
        Complex[] lines = [.. solution.SpectrumH.Select(matrix => matrix[0, 0])];
        Assert.True(lines[0].Real > lines[1].Real && lines[1].Real > lines[2].Real);
        Assert.All(lines, line => Assert.True(line.Imaginary < 0));
    }
}
