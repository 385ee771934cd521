using System.Globalization;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Tests.BoundaryElements;

/// <summary>Reference rows of <c>tests/Reference/field</c> and the problems they describe.</summary>
internal static class FieldCases
{
    public static readonly double[] SixM = [-0.026, -0.0156, -0.0052, 0.0052, 0.0156, 0.026];
    public static readonly IFieldEngine Fast = new FastFieldEngine();
    public static readonly IFieldEngine Accurate = new AccurateFieldEngine();

    /// <summary>Rows of a file: lines with # are remarks, the first other line names the columns.</summary>
    public static IReadOnlyList<Dictionary<string, string>> Read(string name)
    {
        string[] rows =
        [
            .. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Reference", "field", name))
                .Where(l => l.Length > 0 && l[0] != '#'),
        ];
        string[] names = rows[0].Split(',');
        return [.. rows.Skip(1).Select(row => names.Zip(row.Split(',')).ToDictionary(p => p.First, p => p.Second))];
    }

    public static double Number(this Dictionary<string, string> row, string column) =>
        double.Parse(row[column], NumberStyles.Float, CultureInfo.InvariantCulture);

    public static Bobbin Former(double halfLong, double radius, double height, double halfShort = 0) =>
        new()
        {
            CoreLengthM = 2 * (halfLong + radius),
            CoreWidthM = 2 * (halfShort + radius),
            EndRadiusM = radius,
            WindingHeightM = height,
        };

    public static PoleModel Rods(
        double[] positions,
        double mu,
        double conductivity = 0,
        double radius = 0.0024,
        double length = 0.018,
        double top = 0.009
    ) =>
        new()
        {
            Shape = PoleShape.Rod,
            Material = "test",
            DiameterM = 2 * radius,
            LengthM = length,
            PositionsM = positions,
            TopsM = [.. positions.Select(_ => top)],
            RelativePermeability = Estimate.Exact(mu),
            ConductivitySPerM = Estimate.Exact(conductivity),
        };

    /// <summary>The standard winding, round (half straight 0) or long, per turn.</summary>
    public static FieldCoil Coil(double halfLong, params PoleModel[] poles) =>
        new(Former(halfLong, 0.00325, 0.011), 0.003, 1, 1, default, poles);

    public static FieldProblem One(FieldCoil coil, params double[] hz) => new([coil], [], [], hz);

    /// <summary>
    /// Two windings side by side with twelve rods of permeability 100, and a bar between their feet unless its permeability is 1.
    /// </summary>
    public static FieldProblem TwoCoils(double bar, int secondSign = 1)
    {
        FieldCoil At(double y, int sign) =>
            new(Former(0.0285, 0.004, 0.0065), 0.0045, 1, sign, new Vector3M(0, y, 0), [Rods(SixM, 100, length: 0.015, top: 0.006)]);
        BarModel magnet = new()
        {
            Material = "test",
            SizeM = new Vector3M(0.062, 0.012, 0.003),
            CentreM = new Vector3M(0, 0, -0.0075),
            RelativePermeability = Estimate.Exact(bar),
            ConductivitySPerM = Estimate.Exact(0),
        };
        return new FieldProblem([At(-0.009, 1), At(0.009, secondSign)], bar > 1 ? [magnet] : [], [], []);
    }

    public static double Worst(double worst, double found, double expected, double allowed, string what)
    {
        double off = found / expected - 1;
        Assert.True(
            Math.Abs(off) <= allowed,
            FormattableString.Invariant($"{what}: found {found:G6}, expected {expected:G6}, {off:P3} off, {allowed:P2} allowed")
        );
        return Math.Abs(off) > Math.Abs(worst) ? off : worst;
    }
}
