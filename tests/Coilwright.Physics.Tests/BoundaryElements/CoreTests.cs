using System.Numerics;
using Coilwright.Physics.BoundaryElements;
using static Coilwright.Physics.Tests.BoundaryElements.FieldCases;

namespace Coilwright.Physics.Tests.BoundaryElements;

public sealed class CoreTests
{
    // Finite elements, row by row in tests/Reference/field/rods.csv (derived). The allowance is the documented error of each cutting plus
    // the value's own.
    [Theory]
    [InlineData("fast", 0.01)]
    [InlineData("accurate", 0.0015)]
    public void Inductance_with_rods_matches_finite_elements(string engine, double allowed)
    {
        Evidence check = Evidence.Outside(
            $"Inductance with one and six rods, permeability 1.05 to 500, {engine} engine",
            Field("rods.csv"),
            "derived",
            "ratchet, on top of the reference's own 0.01 to 0.05 %",
            "rods-" + engine
        );
        foreach (Dictionary<string, string> row in Read("rods.csv"))
        {
            double[] x = [.. row["x"].Split(';').Select(text => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture))];
            FieldSolution solution = Named(engine).Solve(One(Coil(row.Number("a"), Rods(x, row.Number("mu")))), Cancel);
            double expected = row.Number("inductanceH");
            check.WithinPart(solution.StaticInductanceH[0, 0], expected, allowed + row.Number("error"), row["name"]);
            Inside(solution, 0, expected, row.Number("error"), row["name"]);
        }

        check.Record();
    }

    // 3-D finite elements (derived, own error 0.2 to 0.5 %). The fast engine takes the charge as even around the rods, which costs most
    // beside a bar.
    [Theory]
    [InlineData("fast", 0.01, 0.014)]
    [InlineData("accurate", 0.0015, 0.001)]
    public void Two_coils_with_rods_and_a_bar_match_finite_elements(string engine, double allowed, double allowedMutual)
    {
        const string Because = "ratchet: the reference is good to 0.2 to 0.5 %";
        Evidence self = Evidence.Outside(
            $"Inductance of each of two coils with rods and bar, {engine} engine",
            Field("two-coils.csv"),
            "derived",
            Because,
            "two-coils-" + engine
        );
        Evidence mutual = Evidence.Outside(
            $"Mutual inductance of two coils with rods and bar, {engine} engine",
            Field("two-coils.csv"),
            "derived",
            Because,
            "mutual-" + engine
        );
        foreach (Dictionary<string, string> row in Read("two-coils.csv"))
        {
            FieldSolution solution = Named(engine).Solve(TwoCoils(row.Number("bar")), Cancel);
            self.WithinPart(solution.StaticInductanceH[0, 0], row.Number("inductanceH"), allowed, row["name"] + " L");
            Inside(solution, 0, row.Number("inductanceH"), row.Number("error"), row["name"] + " L");
            Inside(solution, 1, row.Number("mutualH"), row.Number("error"), row["name"] + " M");
            mutual.WithinPart(solution.StaticInductanceH[0, 1], row.Number("mutualH"), allowedMutual, row["name"] + " M");
        }

        self.Record();
        mutual.Record();
    }

    [Theory]
    [InlineData("fast", 0.006)]
    [InlineData("accurate", 0.001)]
    public void Effective_area_matches_dipole_moment_and_reciprocal_linkage(string engine, double allowed)
    {
        Evidence check = Evidence.Outside(
            $"Effective area with six rods, {engine} engine",
            "dipole moment and reciprocal linkage; closed form in air: tests/Reference/field/areas.csv [FieldSolver]",
            "derived",
            FormattableString.Invariant(
                $"reference: its own 0.5 % with rods (0.0001 % in air), and {100 * allowed:0.##} % of our own (ratchet)"
            )
        );
        foreach (Dictionary<string, string> row in Read("areas.csv"))
        {
            FieldSolution solution = Named(engine).Solve(One(Coil(0.02975, Rods(SixM, row.Number("mu")))), Cancel);
            check.WithinPart(solution.EffectiveAreaM2[0], row.Number("areaM2"), allowed + row.Number("error"), row["name"]);
        }

        check.Record();
    }

    // Axisymmetric finite elements, 100 Hz to 20 kHz (derived, own error 0.5 %). R reads 2 to 3 % high at low frequency from the rod's
    // ends.
    [Theory]
    [InlineData("fast", 0.01, 0.03)]
    [InlineData("accurate", 0.01, 0.03)]
    public void Inductance_and_loss_of_a_conducting_rod_match_finite_elements(string engine, double allowed, double allowedLoss)
    {
        Evidence self = Evidence.Outside(
            $"Inductance of a conducting rod's coil, 100 Hz to 20 kHz, {engine} engine",
            Field("eddy.csv"),
            "derived",
            "ratchet: the reference is good to 0.5 %"
        );
        Evidence loss = Evidence.Outside(
            $"Eddy loss of a conducting rod, 100 Hz to 20 kHz, {engine} engine",
            Field("eddy.csv"),
            "derived",
            "ratchet: R reads 2 to 3 % high at low frequency, from the rod's ends; the reference is good to 0.5 %",
            "rod-loss-" + engine
        );
        foreach (Dictionary<string, string> row in Read("eddy.csv"))
        {
            double hz = row.Number("hz");
            Complex found = Named(engine).Solve(One(Coil(0, Rods([0], row.Number("mu"), row.Number("sigma"))), hz), Cancel).SpectrumH[0][
                0,
                0
            ];
            self.WithinPart(found.Real, row.Number("inductanceH"), allowed, row["name"] + " L");
            loss.WithinPart(-2 * Math.PI * hz * found.Imaginary, row.Number("resistanceOhm"), allowedLoss, row["name"] + " R");
        }

        self.Record();
        loss.Record();
    }

    // Identities of the evenly magnetised cylinder and graded surface-charge solutions (derived; the latter to 1 %).
    [Fact]
    public void Demagnetising_factors_match_identities_and_graded_solutions()
    {
        Evidence check = Evidence.Outside(
            "Demagnetising factors of cylinders",
            "solenoid identity, mid-plane flux, graded surface charge: tests/Reference/field/demagnetising.csv [FieldSolver]",
            "derived",
            "reference: graded solutions good to 1 %; identities exact, 0.2 % (mean) and 0.5 % (middle) for our table"
        );
        foreach (Dictionary<string, string> row in Read("demagnetising.csv"))
        {
            bool limit = row.Number("mu") <= 1;
            (double mean, double middle) = RodDemagnetisation.Factors(row.Number("slimness"), 1, limit ? 1.001 : row.Number("mu"));
            foreach (
                (string column, double found, double identity) in (ReadOnlySpan<(string, double, double)>)
                    [("magnetometric", mean, 0.002), ("fluxmetric", middle, 0.005)]
            )
            {
                if (row[column].Length > 0)
                {
                    check.WithinPart(found, row.Number(column), limit ? identity : 0.01, row["name"]);
                }
            }
        }

        check.Record();
    }

    /// <summary>The truth lies inside the interval that the engine states, give or take the truth's own error.</summary>
    private static void Inside(FieldSolution solution, int other, double expected, double ownError, string what) =>
        Assert.True(
            Math.Abs(solution.StaticInductanceH[0, other] - expected)
                <= solution.InductanceSpreadH[0, other] + ownError * Math.Abs(expected),
            what + " outside its own interval"
        );

    private static string Field(string file) =>
        $"finite elements, gmsh and getdp; models not kept: tests/Reference/field/{file} [FieldSolver]";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static IFieldEngine Named(string engine) => engine == "fast" ? Fast : Accurate;
}
