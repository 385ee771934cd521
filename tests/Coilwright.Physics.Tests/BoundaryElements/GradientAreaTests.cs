using Coilwright.Physics.BoundaryElements;
using Coilwright.Shared;
using static Coilwright.Physics.Tests.BoundaryElements.FieldCases;

namespace Coilwright.Physics.Tests.BoundaryElements;

/// <summary>Hum of a field that changes from place to place: by hand, and by the mutual inductance with a far loop.</summary>
public sealed class GradientAreaTests
{
    private const double Mu0 = 4e-7 * Math.PI;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact] // by hand: ± area × half the distance from each of two opposed coils
    public void Two_opposed_coils_without_cores_link_area_times_distance()
    {
        FieldSolution pair = Accurate.Solve(Bare(-1), Cancel);
        double area = AirInductance.MeanAreaM2(Bare(-1).Coils[0].Bobbin, 0.0045);
        Assert.Equal(-0.018 * area, Sum(pair, 1), 1e-12 * area);
        Assert.Equal(0, Sum(pair, 0), 1e-12 * area);
        Assert.Equal(0, pair.EffectiveAreaM2[0] + pair.EffectiveAreaM2[1], 1e-12 * area);
        Assert.Equal(0, Sum(Accurate.Solve(Bare(1), Cancel), 1), 1e-12 * area);
    }

    // A far loop's field along z on the pickup is B0 + G·place + …; reciprocity: mutual inductance per ampere in the loop is its linkage.
    // Taken as the difference of two loops placed alike on both sides, the even terms fall out; what is left beyond the gradient goes with
    // (size/distance)².
    [Theory]
    [InlineData("fast", 1, 0.002)]
    [InlineData("accurate", 1, 0.002)]
    [InlineData("accurate", 0, 0.002)]
    public void A_far_loop_links_a_pair_with_cores_and_bar_by_its_gradient(string engine, int axis, double allowed)
    {
        const double Far = 1.5;
        FieldProblem pickup = axis == 1 ? TwoCoils(4.5, -1) : Lopsided();
        FieldSolution alone = Engine(engine).Solve(pickup, Cancel);
        double found = 0,
            field = 0;
        foreach (int side in (int[])[-1, 1])
        {
            FieldCoil loop = Loop(axis == 0 ? side * Far : 0, axis == 1 ? side * Far : 0, 0);
            FieldSolution with = Engine(engine).Solve(pickup with { Coils = [.. pickup.Coils, loop] }, Cancel);
            found += side * (with.StaticInductanceH[0, 2] + with.StaticInductanceH[1, 2]) / 2;
            // On the loop's own plane Bz = −µ0·m/4π·r³ beyond it; towards a loop at +Far it grows: dBz/dplace = −3·µ0·m/4π·Far⁴.
            field = -3 * Mu0 * AirInductance.MeanAreaM2(loop.Bobbin, loop.BuildM) / (4 * Math.PI * Math.Pow(Far, 4));
        }

        double expected = field * Sum(alone, axis);
        Evidence
            .Own(
                $"Hum of a field changing along {"xy"[axis]}: linkage of a pair with cores and bar, {engine} engine",
                "reciprocity: mutual inductance with small loops 1.5 m away on both sides",
                "method: what lies beyond the gradient goes with (size/distance)², 0.1 to 0.2 %"
            )
            .WithinPart(found, expected, allowed)
            .Record();
    }

    [Fact] // above and below: on its axis a loop's field falls as 2·µ0·m/4π·z³, shared evenly between x and y
    public void Loops_far_above_and_below_link_one_coil_by_its_gradient_along_z()
    {
        const double Far = 1.5;
        FieldCoil coil = Coil(0.02975, Rods(SixM, 100)) with { Position = new Vector3M(0, 0, 0.004) };
        FieldSolution alone = Accurate.Solve(One(coil), Cancel);
        double found = 0,
            area = 0;
        foreach (int side in (int[])[-1, 1])
        {
            FieldCoil loop = Loop(0, 0, side * Far);
            area = AirInductance.MeanAreaM2(loop.Bobbin, loop.BuildM);
            found += side * Accurate.Solve(new FieldProblem([coil, loop], [], [], []), Cancel).StaticInductanceH[0, 1] / 2;
        }

        double expected = 6 * Mu0 * area / (4 * Math.PI * Math.Pow(Far, 4)) * alone.Gradient!.M3[0, 2];
        Assert.Equal(1, found / expected, 0.003);
        Assert.True(alone.Gradient.M3[0, 2] > 0.004 * AirInductance.MeanAreaM2(coil.Bobbin, coil.BuildM));
    }

    [Fact]
    public void It_goes_with_turns_and_sign()
    {
        FieldProblem pair = TwoCoils(4.5, -1);
        FieldProblem many = pair with { Coils = [.. pair.Coils.Select(coil => coil with { Turns = 5000, Sign = -coil.Sign })] };
        double one = Sum(Fast.Solve(pair, Cancel), 1);
        Assert.Equal(-5000 * one, Sum(Fast.Solve(many, Cancel), 1), 1e-9 * Math.Abs(5000 * one));
    }

    private static double Sum(FieldSolution solution, int axis) => solution.Gradient!.M3[0, axis] + solution.Gradient.M3[1, axis];

    private static IFieldEngine Engine(string name) => name == "fast" ? Fast : Accurate;

    private static FieldProblem Bare(int secondSign)
    {
        FieldProblem pair = TwoCoils(1, secondSign);
        return pair with { Coils = [.. pair.Coils.Select(coil => coil with { Poles = [] })] };
    }

    /// <summary>Two coils end to end along x with rods of different steel, without symmetry.</summary>
    private static FieldProblem Lopsided()
    {
        FieldCoil At(double x, int sign, double mu) =>
            new(
                Former(0.008, 0.004, 0.0065),
                0.0045,
                1,
                sign,
                new Vector3M(x, 0, 0),
                [Rods([-0.0052, 0.0052], mu, length: 0.015, top: 0.006)]
            );
        return new FieldProblem([At(-0.018, 1, 100), At(0.018, -1, 10)], [], [], []);
    }

    private static FieldCoil Loop(double x, double y, double z) => new(Former(0, 0.002, 0.0005), 0.0002, 1, 1, new Vector3M(x, y, z), []);
}
