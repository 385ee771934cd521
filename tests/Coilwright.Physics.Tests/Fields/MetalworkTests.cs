using System.Numerics;
using Coilwright.Physics.Fields;
using static Coilwright.Physics.Tests.Fields.FieldCases;

namespace Coilwright.Physics.Tests.Fields;

public sealed class MetalworkTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // Finite elements, row by row in tests/Reference/field/covers.csv (derived). The allowance is the documented error of each cutting plus the value's own.
    [Theory]
    [InlineData("fast", 0.005, 0.03)]
    [InlineData("accurate", 0.002, 0.02)]
    public void Inductance_and_loss_with_a_cover_or_plate_match_finite_elements(string engine, double allowed, double allowedLoss)
    {
        double worst = 0, worstLoss = 0;
        foreach (Dictionary<string, string> row in Read("covers.csv"))
        {
            double hz = row.Number("hz");
            PoleModel[] poles = row["rod"] == "1" ? [Rods([0], 4.5, 2e6, length: 0.012, top: 0.006)] : [];
            FieldProblem problem = One(Coil(row.Number("a"), poles), hz) with { Sheets = [Sheet(row)] };
            Complex found = (engine == "fast" ? Fast : Accurate).Solve(problem, Cancel).SpectrumH[0][0, 0];
            Console.WriteLine(FormattableString.Invariant($"{engine} {row["name"]} {found.Real / row.Number("inductanceH") - 1:P3} {-2 * Math.PI * hz * found.Imaginary / row.Number("resistanceOhm") - 1:P3}"));
            worst = Worst(worst, found.Real, row.Number("inductanceH"), 9*allowed + row.Number("errorL"), row["name"] + " L");
            worstLoss = Worst(worstLoss, -2 * Math.PI * hz * found.Imaginary, row.Number("resistanceOhm"), 9*allowedLoss + row.Number("errorR"), row["name"] + " R");
        }
    }

    private static SheetModel Sheet(Dictionary<string, string> row) => new()
    {
        Shape = row["shape"] == "cover" ? SheetShape.Cover : SheetShape.Plate,
        Material = "test",
        ThicknessM = row.Number("thickness"),
        LengthM = row.Number("length"),
        WidthM = row.Number("width"),
        CornerM = row.Number("corner"),
        TopM = row.Number("top"),
        BottomM = row.Number("bottom"),
        RelativePermeability = Estimate.Exact(1),
        ConductivitySPerM = Estimate.Exact(row.Number("sigma")),
    };
}
