using Coilwright.Analysis.Uncertainty;
using Coilwright.Shared;

namespace Coilwright.Analysis.Tests.Uncertainty;

public sealed class SensitivityIndicesTests
{
    private static SensitivityIndex[] Of(int dimensions, Func<double[], double> f, int points = 16_384) =>
        SensitivityIndices.Estimate(
            dimensions,
            [.. Enumerable.Range(0, dimensions)],
            1,
            points,
            3,
            () => (x, y) => y[0] = f(x),
            TestContext.Current.CancellationToken
        )[0];

    // Ishigami and Homma 1990, sin x1 + 7 sin² x2 + 0.1 x3⁴ sin x1 on (−π, π): the indices follow from
    // V1 = (1 + bπ⁴/5)²/2, V2 = a²/8, V13 = b²π⁸·8/225.
    [Fact]
    public void Ishigami_function_has_its_exact_indices()
    {
        const double A = 7,
            B = 0.1;
        double pi4 = Math.Pow(Math.PI, 4),
            v1 = Math.Pow(1 + B * pi4 / 5, 2) / 2,
            v2 = A * A / 8,
            v13 = B * B * pi4 * pi4 * 8 / 225,
            v = v1 + v2 + v13;
        SensitivityIndex[] found = Of(3, u =>
        {
            double x1 = Angle(u[0]),
                x2 = Angle(u[1]),
                x3 = Angle(u[2]);
            return Math.Sin(x1) + A * Math.Sin(x2) * Math.Sin(x2) + B * Math.Pow(x3, 4) * Math.Sin(x1);
        });
        double[] first = [v1 / v, v2 / v, 0],
            total = [(v1 + v13) / v, v2 / v, v13 / v];
        Evidence check = Evidence.Outside(
            "Sensitivity indices of the Ishigami function",
            "closed form [Ishigami]",
            "derived",
            "chance: 16,384 points; over forty seeds they scatter by 0.0008 at most"
        );
        for (int i = 0; i < 3; i++)
        {
            check.Within(found[i].FirstOrder, first[i], 0.004).Within(found[i].Total, total[i], 0.004);
        }

        check.Record();
    }

    // Sobol's g-function: product of (|4u − 2| + a)/(1 + a); V_i = 1/(3(1 + a)²).
    [Fact]
    public void G_function_has_its_exact_indices()
    {
        double[] a = [0, 1, 4.5, 9, 99];
        SensitivityIndex[] found = Of(a.Length, u =>
            Enumerable.Range(0, a.Length).Aggregate(1.0, (product, i) => product * (Math.Abs(4 * u[i] - 2) + a[i]) / (1 + a[i]))
        );
        double[] parts = [.. a.Select(value => 1 / (3 * (1 + value) * (1 + value)))];
        double variance = parts.Aggregate(1.0, (product, part) => product * (1 + part)) - 1;
        Evidence check = Evidence.Outside(
            "Sensitivity indices of the g-function of five inputs",
            "I. M. Sobol 1993, closed form [Ishigami]",
            "derived",
            "chance: 16,384 points"
        );
        for (int i = 0; i < a.Length; i++)
        {
            check.Within(found[i].FirstOrder, parts[i] / variance, 0.01);
            check.Within(
                found[i].Total,
                parts[i] * parts.Where((_, k) => k != i).Aggregate(1.0, (product, part) => product * (1 + part)) / variance,
                0.01
            );
        }

        check.Record();
    }

    [Fact]
    public void Inputs_of_one_group_are_one_cause()
    {
        SensitivityIndex[] found = SensitivityIndices.Estimate(
            3,
            [0, 0, 1],
            1,
            2048,
            1,
            () => (x, y) => y[0] = x[0] - x[1] + x[2],
            TestContext.Current.CancellationToken
        )[0];
        Assert.Equal(2.0 / 3, found[0].FirstOrder, 0.005);
        Assert.Equal(1.0 / 3, found[1].Total, 0.005);
    }

    [Fact]
    public void What_does_not_vary_has_no_causes() => Assert.All(Of(2, _ => 5), index => Assert.Equal(default, index));

    private static double Angle(double unit) => Math.PI * (2 * unit - 1);
}
