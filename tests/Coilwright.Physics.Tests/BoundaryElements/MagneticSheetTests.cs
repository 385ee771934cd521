using Coilwright.Physics.BoundaryElements;
using static Coilwright.Physics.Tests.BoundaryElements.FieldCases;

namespace Coilwright.Physics.Tests.BoundaryElements;

/// <summary>
/// Metalwork that draws flux: not solved, but said, and wide enough to hold what a sheet does when it is solved as a thin bar.
/// </summary>
public sealed class MagneticSheetTests
{
    private static readonly FieldCoil s_coil = Coil(0.02975, Rods(SixM, 3.6) with { PolarisationT = Estimate.Exact(0.45) });

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void A_steel_plate_is_named_and_widens_inductance_area_and_field()
    {
        FieldSolution brass = Solve(1),
            steel = Solve(100);
        Assert.Empty(brass.Notes);
        Assert.Equal("metalwork[0]", Assert.Single(steel.Notes).Field);
        Assert.Equal(0, brass.DrawnShare);
        Assert.Equal(0.3, steel.InductanceSpreadH[0, 0] / steel.StaticInductanceH[0, 0], 0.02);
        Assert.Equal(0.3, steel.SpectrumSpreadH[0][0, 0].Real / steel.StaticInductanceH[0, 0], 0.02);
        Assert.Equal(0.3, steel.AreaSpreadM2[0] / steel.EffectiveAreaM2[0], 0.02);
        Assert.True(brass.InductanceSpreadH[0, 0] < 0.02 * brass.StaticInductanceH[0, 0]);
        Assert.Equal(0.5, steel.DrawnShare);
    }

    [Theory] // solved as a bar as thin as the plate
    [InlineData(10)]
    [InlineData(100)]
    [InlineData(500)]
    public void The_interval_holds_what_a_plate_under_the_coil_does(double permeability)
    {
        BarModel plate = new()
        {
            Material = "test",
            SizeM = new Vector3M(0.07, 0.03, 0.001),
            CentreM = new Vector3M(0, 0, -0.0105),
            RelativePermeability = Estimate.Exact(permeability),
            ConductivitySPerM = Estimate.Exact(0),
        };
        FieldSolution solved = Accurate.Solve(new FieldProblem([s_coil], [plate], [], []), Cancel),
            told = Solve(permeability);
        Assert.InRange(
            solved.StaticInductanceH[0, 0],
            told.StaticInductanceH[0, 0] - told.InductanceSpreadH[0, 0],
            told.StaticInductanceH[0, 0] + told.InductanceSpreadH[0, 0]
        );
        Vector3M at = new(-0.0052, 0, 0.01);
        Assert.InRange(
            solved.Map.MagnetFluxDensityT(at).ZM / told.Map.MagnetFluxDensityT(at).ZM,
            1 / (1 + told.DrawnShare),
            1 + told.DrawnShare
        );
        Assert.True(solved.StaticInductanceH[0, 0] > 1.02 * told.StaticInductanceH[0, 0]); // it does draw flux
    }

    [Theory] // a closed top of 0.5 mm over the poles, solved as a bar
    [InlineData(10)]
    [InlineData(500)]
    public void A_sheet_over_the_poles_takes_most_of_the_field_and_the_interval_holds_it(double permeability)
    {
        BarModel sheet = new()
        {
            Material = "test",
            SizeM = new Vector3M(0.07, 0.022, 0.0005),
            CentreM = new Vector3M(0, 0, 0.0098),
            RelativePermeability = Estimate.Exact(permeability),
            ConductivitySPerM = Estimate.Exact(0),
        };
        Vector3M at = new(-0.0052, 0, 0.0125);
        double solved = Accurate.Solve(new FieldProblem([s_coil], [sheet], [], []), Cancel).Map.MagnetFluxDensityT(at).ZM;
        SheetModel steel = MetalworkTests.Plate(0.07, 0.022, 0.01005, 0.0005, 6e6) with
        {
            RelativePermeability = Estimate.Exact(permeability),
        };
        FieldSolution told = Fast.Solve(One(s_coil, 1000) with { Sheets = [steel] }, Cancel);
        Assert.Equal(3, told.DrawnShare);
        Assert.InRange(solved / told.Map.MagnetFluxDensityT(at).ZM, 1 / (1 + told.DrawnShare), 0.9);
    }

    private static FieldSolution Solve(double permeability) =>
        Fast.Solve(
            One(s_coil, 1000) with
            {
                Sheets = [MetalworkTests.Plate(0.07, 0.03, -0.01, 0.001, 6e6) with { RelativePermeability = Estimate.Exact(permeability) }],
            },
            Cancel
        );
}
