using Coilwright.Analysis.Solving;
using CsCheck;

namespace Coilwright.Analysis.Tests.Solving;

public sealed class TradeOffTests
{
    // Few different values, so that ties are common.
    private static readonly Gen<int[][]> s_points = Gen.Int[0, 12].Array[3].Array[0, 60];

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void The_front_is_what_comparing_all_with_all_gives(int dimensions) =>
        s_points.ForAll(points =>
        {
            Func<int, double>[] axes = [.. Enumerable.Range(0, dimensions).Select(axis => (Func<int, double>)(k => points[k][axis]))];
            bool Beaten(int k) =>
                Enumerable
                    .Range(0, points.Length)
                    .Any(other => axes.All(axis => axis(other) >= axis(k)) && (axes.Any(axis => axis(other) > axis(k)) || other < k));
            int[] expected = [.. Enumerable.Range(0, points.Length).Where(k => !Beaten(k))];
            return TradeOff.Front(points.Length, axes).Order().SequenceEqual(expected);
        });

    [Fact]
    public void Thinning_keeps_the_ends_and_leaves_no_gap()
    {
        Func<int, double>[] axes = [k => Math.Cos(k * Math.PI / 2 / 999), k => Math.Sin(k * Math.PI / 2 / 999)];
        IReadOnlyList<int> thin = TradeOff.Thin(TradeOff.Front(1000, axes), axes, 50);
        Assert.Equal(50, thin.Count);
        Assert.Contains(0, thin);
        Assert.Contains(999, thin);
        Assert.InRange(thin.Order().Zip(thin.Order().Skip(1)).Max(pair => pair.Second - pair.First), 1, 45);
    }
}
