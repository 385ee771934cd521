using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Winding;
using static Coilwright.Physics.Tests.BoundaryElements.FieldCases;

namespace Coilwright.Physics.Tests.BoundaryElements;

public sealed class AirInductanceTests
{
    // Sources row by row in tests/Reference/field/air.csv; the rule's own allowance adds to each value's own error.
    [Theory]
    [InlineData(Resolution.Accurate, 0.0005)]
    [InlineData(Resolution.Fast, 0.002)]
    public void Self_inductance_matches_handbook_and_independent_solutions(Resolution resolution, double allowed)
    {
        Evidence Check(string cases, string source, string standing) =>
            Evidence.Outside(
                $"Air inductance, {cases}, {resolution} rule",
                source + ": tests/Reference/field/air.csv",
                standing,
                FormattableString.Invariant($"method: {100 * allowed:0.##} % of the quadrature, and each value's own error, 0.002 to 0.5 %")
            );
        Dictionary<string, Evidence> checks = new()
        {
            ["read"] = Check(
                "current sheets and a thick coil",
                "cases of Lyle's method in the tests of dgarnier/inductance [Lyle]",
                "read"
            ),
            ["memory"] = Check("Nagaoka's coefficients and the Brooks coil", "[Nagaoka] [Grover]", "memory"),
            ["derived"] = Check(
                "racetracks, thick and tall coils",
                "filament grids and finite elements [FieldSolver]; the example of [Wheeler]",
                "derived"
            ),
        };
        foreach (Dictionary<string, string> row in Read("air.csv"))
        {
            double turns = row.Number("turns");
            Bobbin former = Former(row.Number("a"), row.Number("r0"), row.Number("h"));
            double found = turns * turns * AirInductance.SelfPerTurnSquaredH(former, row.Number("b"), resolution);
            checks[row["source"].Split(':')[0]].WithinPart(found, row.Number("inductanceH"), allowed + row.Number("error"), row["name"]);
        }

        Assert.All(checks.Values, check => check.Record());
    }

    [Theory]
    [InlineData(Resolution.Accurate, 0.0005)]
    [InlineData(Resolution.Fast, 0.005)]
    public void Mutual_inductance_of_two_coils_matches_an_independent_integral(Resolution resolution, double allowed)
    {
        Evidence check = Evidence.Outside(
            $"Mutual inductance of windings side by side, {resolution} rule",
            "independent flux integral: tests/Reference/field/mutual.csv [FieldSolver]",
            "derived",
            "method: of the quadrature; the reference is good to 0.01 %"
        );
        foreach (Dictionary<string, string> row in Read("mutual.csv"))
        {
            FieldCoil At(double y, double z) =>
                new(Former(row.Number("a"), row.Number("r0"), row.Number("h")), row.Number("b"), 1, 1, new Vector3M(0, y, z), []);
            FieldCoil one = At(0, 0),
                other = At(row.Number("dy"), row.Number("dz"));
            double mutual = AirInductance.MutualPerTurnsH(one, other, resolution);
            check.WithinPart(mutual, row.Number("mutualH"), allowed, row["name"]);
            Assert.Equal(mutual, AirInductance.MutualPerTurnsH(other, one, resolution), 1e-9 * Math.Abs(mutual));
        }

        check.Record();
    }

    // [RosaGrover], worked example of coaxial circles 0.25 m and 0.20 m, 0.1 m apart: 248.7875 nH (memory, verified by Maxwell's elliptic
    // formula).
    [Fact]
    public void Coaxial_circles_match_the_worked_example()
    {
        FieldCoil Circle(double radius, double z) => new(Former(0, radius - 5e-6, 1e-5), 1e-5, 1, 1, new Vector3M(0, 0, z), []);
        Assert.Equal(2.487875e-7, AirInductance.MutualPerTurnsH(Circle(0.25, 0), Circle(0.2, 0.1)), 2.5e-12);
    }

    // A different road for rounded rectangles: plain double sum over short chords of two turns.
    [Theory]
    [InlineData(0.03, 0.002, 0.0015)]
    [InlineData(0.01, 0.01, 0.0001)]
    [InlineData(0.0, 0.004, 0.003)]
    public void Rounded_rectangles_match_a_plain_double_sum(double halfLong, double halfShort, double radius)
    {
        FieldCoil At(double z) => new(Former(halfLong, radius - 5e-6, 1e-5, halfShort), 1e-5, 1, 1, new Vector3M(0.002, -0.001, z), []);
        double found = AirInductance.MutualPerTurnsH(At(0), At(0.004));
        Assert.Equal(1, found / DoubleSum(halfLong, halfShort, radius, 0.004), 0.0005);
    }

    [Fact]
    public void Winding_cut_in_two_has_the_inductance_of_the_whole() =>
        Gen.Select(Gen.Double[0, 0.03], Gen.Double[0, 0.004], Gen.Double[0.2, 0.8])
            .ForAll(
                (a, c, share) =>
                {
                    // Axially cut halves touch: the 4 × 5-point mean of the mutual part is the weakest there, 0.5 % of it.
                    FieldCoil Part(double height, double z) => new(Former(a, 0.003, height, c), 0.003, 1, 1, new Vector3M(0, 0, z), []);
                    FieldCoil low = Part(0.012 * share, 0),
                        high = Part(0.012 * (1 - share), 0.006);
                    double whole = AirInductance.SelfPerTurnSquaredH(Former(a, 0.003, 0.012, c), 0.003);
                    double parts =
                        share * share * AirInductance.SelfPerTurnSquaredH(low.Bobbin, 0.003)
                        + (1 - share) * (1 - share) * AirInductance.SelfPerTurnSquaredH(high.Bobbin, 0.003)
                        + 2 * share * (1 - share) * AirInductance.MutualPerTurnsH(low, high);
                    return Math.Abs(parts / whole - 1) < 0.003;
                },
                count: 12
            );

    [Fact]
    public void Former_turned_by_a_quarter_changes_nothing() =>
        Gen.Select(Gen.Double[0, 0.03], Gen.Double[0, 0.03])
            .ForAll(
                (a, c) =>
                    Math.Abs(
                        AirInductance.SelfPerTurnSquaredH(Former(a, 0.003, 0.01, c), 0.003, Resolution.Fast)
                            / AirInductance.SelfPerTurnSquaredH(Former(c, 0.003, 0.01, a), 0.003, Resolution.Fast)
                            - 1
                    ) < 1e-9,
                count: 50
            );

    [Fact]
    public void Fast_rule_stays_near_the_accurate_one_on_any_former() =>
        Gen.Select(Gen.Double[0, 0.03], Gen.Double[0, 0.01], Gen.Double[0.001, 0.005], Gen.Double[0.001, 0.006], Gen.Double[0.004, 0.014])
            .ForAll(
                (a, c, r, b, h) =>
                {
                    double fast = AirInductance.SelfPerTurnSquaredH(Former(a, r, h, c), b, Resolution.Fast);
                    return Math.Abs(fast / AirInductance.SelfPerTurnSquaredH(Former(a, r, h, c), b) - 1) < 0.002;
                },
                count: 100
            );

    [Fact]
    public void Lengths_times_s_give_inductance_times_s() =>
        Gen.Select(Gen.Double[0.5, 3], Gen.Double[0, 0.03])
            .ForAll(
                (s, a) =>
                {
                    double one = AirInductance.SelfPerTurnSquaredH(Former(a, 0.004, 0.01), 0.003);
                    double other = AirInductance.SelfPerTurnSquaredH(Former(s * a, s * 0.004, s * 0.01), s * 0.003);
                    return Math.Abs(other / (s * one) - 1) < 1e-9;
                },
                count: 8
            );

    // Mean area N·[2a(r1² − r0²) + π(r1³ − r0³)/3]/b of the standard winding (derived).
    [Fact]
    public void Mean_area_is_exact() =>
        Assert.Equal(0.0006384883787368122, AirInductance.MeanAreaM2(Former(0.02975, 0.00325, 0.011), 0.003), 1e-12);

    private static double DoubleSum(double a, double c, double r, double z)
    {
        List<(double X, double Y)> points = [];
        (double X, double Y)[] centres = [(a, c), (-a, c), (-a, -c), (a, -c)];
        for (int quarter = 0; quarter < 4; quarter++)
        {
            for (int i = 0; i <= 150; i++)
            {
                double angle = (quarter + i / 150.0) * Math.PI / 2;
                points.Add((centres[quarter].X + r * Math.Cos(angle), centres[quarter].Y + r * Math.Sin(angle)));
            }

            (double X, double Y) from = points[^1],
                to = quarter == 3
                    ? points[0]
                    : quarter switch
                    {
                        0 => (-a, c + r),
                        1 => (-a - r, -c),
                        _ => (a, -c - r),
                    };
            points.AddRange(
                Enumerable.Range(1, 299).Select(i => (from.X + i / 300.0 * (to.X - from.X), from.Y + i / 300.0 * (to.Y - from.Y)))
            );
        }

        double sum = 0;
        for (int i = 0; i < points.Count; i++)
        {
            (double X, double Y) p = points[i],
                p2 = points[(i + 1) % points.Count];
            for (int j = 0; j < points.Count; j++)
            {
                (double X, double Y) q = points[j],
                    q2 = points[(j + 1) % points.Count];
                double dx = (p.X + p2.X - q.X - q2.X) / 2,
                    dy = (p.Y + p2.Y - q.Y - q2.Y) / 2;
                sum += ((p2.X - p.X) * (q2.X - q.X) + (p2.Y - p.Y) * (q2.Y - q.Y)) / Math.Sqrt(dx * dx + dy * dy + z * z);
            }
        }

        return 1e-7 * sum;
    }
}
