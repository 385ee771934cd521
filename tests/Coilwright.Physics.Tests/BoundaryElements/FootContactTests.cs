using Coilwright.Physics.BoundaryElements;
using static Coilwright.Physics.Tests.BoundaryElements.FieldCases;

namespace Coilwright.Physics.Tests.BoundaryElements;

/// <summary>A rod that stands on a bar, held against the same thing as one body, and against small gaps.</summary>
public sealed class FootContactTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // A shaft under a square plate against a stepped body with a round head of the plate's area: another cutting without any contact.
    // A square instead of a disc adds 0.1 % (µ 4.5) and 0.5 % (µ 100) by itself, seen with a gap of 1 mm.
    [Theory]
    [InlineData("fast", 4.5, 0.005)]
    [InlineData("accurate", 4.5, 0.005)]
    [InlineData("fast", 100, 0.06)]
    [InlineData("accurate", 100, 0.04)]
    public void Shaft_on_a_plate_matches_one_stepped_body(string engine, double mu, double allowed)
    {
        IFieldEngine solver = engine == "fast" ? Fast : Accurate;
        PoleModel stepped = Rods([0], mu) with { Shape = PoleShape.Screw, HeadDiameterM = 0.012, HeadHeightM = 0.003 };
        double one = Accurate.Solve(Wide([stepped], []), Cancel).StaticInductanceH[0, 0];
        FieldSolution found = solver.Solve(
            Wide(
                [Rods([0], mu, length: 0.015, top: 0.006)],
                [Plate(0.0075, 0.012 * Math.Sqrt(Math.PI) / 2, 0.012 * Math.Sqrt(Math.PI) / 2, mu)]
            ),
            Cancel
        );
        double two = found.StaticInductanceH[0, 0];
        Assert.InRange(Math.Abs(two - one), 0, found.InductanceSpreadH[0, 0] + 0.006 * one);
        Evidence
            .Own(
                FormattableString.Invariant($"Inductance with a shaft standing on a plate, permeability {mu}, {engine} engine"),
                "the same as one stepped body, accurate engine",
                FormattableString.Invariant($"ratchet: the square plate for a disc explains {(mu < 5 ? 0.1 : 0.5)} % of it"),
                FormattableString.Invariant($"foot-{engine}-{mu}")
            )
            .WithinPart(two, one, allowed)
            .Record();
    }

    // Closing the gap can only raise the inductance, and contact continues what small gaps approach.
    [Theory]
    [InlineData(4.5, 0.004)]
    [InlineData(100, 0.06)]
    public void Closing_the_gap_to_a_keeper_goes_over_into_contact(double mu, double step)
    {
        double At(double gap) =>
            Accurate
                .Solve(new FieldProblem([Coil(0.02975, Rods(SixM, mu))], [Plate(-0.0105 - gap, 0.062, 0.006, mu)], [], []), Cancel)
                .StaticInductanceH[0, 0];
        double wide = At(0.001),
            near = At(0.0002),
            closed = At(0);
        Assert.True(wide < near && near < closed);
        Assert.InRange(closed / near - 1, 0, step);
        Assert.Equal(closed, At(0.00001), 0.005 * closed);
    }

    private static FieldProblem Wide(PoleModel[] poles, BarModel[] bars) =>
        new([new FieldCoil(Former(0, 0.0065, 0.011), 0.003, 1, 1, default, poles)], bars, [], []);

    private static BarModel Plate(double z, double length, double width, double mu) =>
        new()
        {
            Material = "test",
            SizeM = new Vector3M(length, width, 0.003),
            CentreM = new Vector3M(0, 0, z),
            RelativePermeability = Estimate.Exact(mu),
            ConductivitySPerM = Estimate.Exact(0),
        };
}
