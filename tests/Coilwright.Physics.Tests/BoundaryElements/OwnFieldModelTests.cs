using System.Globalization;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Shared;

namespace Coilwright.Physics.Tests.BoundaryElements;

/// <summary>Models of our own, solved by gmsh and getdp: tests/Outside/fields remakes tests/Reference/field/own-models.csv.</summary>
public sealed class OwnFieldModelTests
{
    private const string Source = "our finite-element models, gmsh and getdp: tests/Reference/field/own-models.csv [FieldModels]";

    // one mesh of 44,000 nodes; with 80,000 nodes the value fell by 0.03 % (4.5) and 0.23 % (100), and it still falls: the lower bound is
    // wide for that
    [Theory]
    [InlineData(4.5, 0.002)]
    [InlineData(100, 0.008)]
    public void Six_rods_agree_with_finite_elements_to_their_meshs_error(double mu, double below)
    {
        double theirs = Rows("six_rods").Single(row => Math.Abs(row.Number("mu") - mu) < 1e-9).Number("inductanceH");
        double ours = FieldCases
            .Accurate.Solve(
                FieldCases.One(FieldCases.Coil(0.02975, FieldCases.Rods(FieldCases.SixM, mu))),
                TestContext.Current.CancellationToken
            )
            .StaticInductanceH[0, 0];
        Evidence
            .Outside(
                FormattableString.Invariant(
                    $"Inductance with six rods, permeability {mu}, accurate engine against our own finite elements"
                ),
                Source,
                "run here",
                "ratchet below; above, the next finer mesh fell by 0.03 % (4.5) and 0.23 % (100) and would fall further",
                mu > 5 ? "own-rods-100" : "own-rods-4.5"
            )
            .BetweenParts(ours, theirs, -below, 0.001)
            .Record();
    }

    [Fact] // two meshes, carried to none by the square of their element size
    public void A_pair_of_coils_with_slugs_and_a_bar_agrees_with_finite_elements()
    {
        double At(string drive)
        {
            double coarse = Rows("pair_bar_mesh1.8").Single(row => row["drive"] == drive).Number("inductanceH"),
                fine = Rows("pair_bar_mesh1.3").Single(row => row["drive"] == drive).Number("inductanceH");
            return fine - (coarse - fine) * 1.3 * 1.3 / (1.8 * 1.8 - 1.3 * 1.3);
        }

        double[,] ours = FieldCases.Accurate.Solve(FieldCases.TwoCoils(4.5), TestContext.Current.CancellationToken).StaticInductanceH;
        double self = (At("even") + At("odd")) / 2,
            mutual = (At("even") - At("odd")) / 2;
        const string Because = "method: what two meshes carried to none leave open";
        Evidence
            .Outside(
                "Pair of coils with slugs and a bar, L, accurate engine against our own finite elements",
                Source + ", two meshes extrapolated",
                "run here",
                Because
            )
            .WithinPart(ours[0, 0], self, 0.005)
            .Record();
        Evidence
            .Outside(
                "Pair of coils with slugs and a bar, M, accurate engine against our own finite elements",
                Source + ", two meshes extrapolated",
                "run here",
                Because
            )
            .WithinPart(ours[0, 1], mutual, 0.01)
            .Record();
    }

    [Theory] // a steel plate of 1 mm, 1 mm under six rods of permeability 3.6; one mesh, whose value lies above the converged one
    [InlineData("10", "fast", 0.006)]
    [InlineData("10", "accurate", 0.004)]
    [InlineData("100", "fast", 0.006)]
    [InlineData("100", "accurate", 0.004)]
    public void A_thin_steel_plate_solved_as_a_bar_agrees_with_finite_elements(string mu, string engine, double allowed)
    {
        double theirs = Rows("plate_mu").Single(row => row["mu"] == mu).Number("inductanceH");
        BarModel plate = new()
        {
            Material = "test",
            SizeM = new Vector3M(0.07, 0.03, 0.001),
            CentreM = new Vector3M(0, 0, -0.0105),
            RelativePermeability = Estimate.Exact(double.Parse(mu, CultureInfo.InvariantCulture)),
            ConductivitySPerM = Estimate.Exact(0),
        };
        FieldProblem problem = new([FieldCases.Coil(0.02975, FieldCases.Rods(FieldCases.SixM, 3.6))], [plate], [], []);
        double ours = (engine == "fast" ? FieldCases.Fast : FieldCases.Accurate)
            .Solve(problem, TestContext.Current.CancellationToken)
            .StaticInductanceH[0, 0];
        Evidence
            .Outside(
                $"Inductance over a steel plate of 1 mm solved as a bar, permeability {mu}, {engine} engine "
                    + $"against our own finite elements",
                Source,
                "run here",
                "ratchet below: one mesh, whose value lies above the converged one"
            )
            .BetweenParts(ours, theirs, -allowed, 0.001)
            .Record();
    }

    // At 1 kHz the skin is four times the plate's thickness and the mesh resolves the current; at 20 kHz it has one element where two or
    // three would be wanted.
    [Theory]
    [InlineData("1000", 0.002, 0.01)]
    [InlineData("20000", 0.002, 0.03)]
    public void A_plate_under_a_racetrack_loses_what_finite_elements_say(string hz, double allowed, double allowedLoss)
    {
        Dictionary<string, string> theirs = FieldCases.Read("own-eddies.csv").Single(row => row["hz"] == hz);
        FieldProblem problem = FieldCases.One(FieldCases.Coil(0.02975), theirs.Number("hz")) with
        {
            Sheets = [MetalworkTests.Plate(0.076, 0.018, -0.0064, 0.0008, 16e6)],
        };
        System.Numerics.Complex found = FieldCases.Accurate.Solve(problem, TestContext.Current.CancellationToken).SpectrumH[0][0, 0];
        double loss = -2 * Math.PI * theirs.Number("hz") * found.Imaginary;
        const string Model = "our finite-element model, gmsh and getdp: tests/Reference/field/own-eddies.csv [FieldModels]";
        string because =
            hz == "1000" ? "method: the mesh resolves the current" : "ratchet: one element of the mesh where two or three would be wanted";
        Evidence
            .Outside(
                $"L of a racetrack over a brass plate at {hz} Hz, accurate engine against our own finite elements",
                Model,
                "run here",
                because
            )
            .WithinPart(found.Real, theirs.Number("inductanceH"), allowed)
            .Record();
        Evidence
            .Outside(
                $"R of a racetrack over a brass plate at {hz} Hz, accurate engine against our own finite elements",
                Model,
                "run here",
                because,
                "own-plate-" + hz
            )
            .WithinPart(loss, theirs.Number("resistanceOhm"), allowedLoss)
            .Record();
    }

    private static IEnumerable<Dictionary<string, string>> Rows(string name) =>
        FieldCases.Read("own-models.csv").Where(row => row["name"].StartsWith(name, StringComparison.Ordinal));
}
