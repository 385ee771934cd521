using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Tests.Causes;

/// <summary>
/// The best that any judge can do, nearly: it has seen some thousands of faulty coils of the same shop, and says what most of the nearest
/// ones were. It knows sizes and rates of the faults, which no program does.
/// </summary>
internal sealed class NearestNeighbourJudge
{
    private const int Neighbours = 25;

    private readonly (double[] Place, string Cause)[] _seen;

    public NearestNeighbourJudge(IEnumerable<(IReadOnlyList<SimulatedCoil> Batch, int At)> seen) =>
        _seen = [.. seen.Select(one => (Place(one.Batch, one.At), one.Batch[one.At].Cause))];

    /// <summary>Causes, the likeliest first.</summary>
    public IReadOnlyList<string> Judge(IReadOnlyList<SimulatedCoil> batch, int at)
    {
        double[] here = Place(batch, at);
        return
        [
            .. _seen
                .Where(one => one.Place.Length == here.Length)
                .OrderBy(one => Distance(one.Place, here))
                .Take(Neighbours)
                .GroupBy(one => one.Cause)
                .OrderByDescending(group => group.Count())
                .Select(group => group.Key),
        ];
    }

    /// <summary>Logarithms against the batch's middle in units of the scatter; last the step of the ohms at this coil.</summary>
    private static double[] Place(IReadOnlyList<SimulatedCoil> batch, int at)
    {
        double[] own =
        [
            .. new[] { (QuantityKey.DcResistance, 0.005), (QuantityKey.Inductance, 0.007), (QuantityKey.Q, 0.02) }
                .Select(of =>
                    (Own: Log(batch[at], of.Item1), Middle: Middle([.. batch.Take(4).Select(coil => Log(coil, of.Item1))]), of.Item2)
                )
                .Where(of => of.Own is not null && of.Middle is not null)
                .Select(of => Math.Clamp((of.Own!.Value - of.Middle!.Value) / of.Item3, -1000, 1000)),
        ];
        double? before = Middle([.. batch.Take(at).Select(coil => Log(coil, QuantityKey.DcResistance))]),
            after = Middle([.. batch.Skip(at + 1).Select(coil => Log(coil, QuantityKey.DcResistance))]);
        return [.. own, Math.Clamp(((after ?? 0) - (before ?? after ?? 0)) / 0.005, -5, 5)];
    }

    private static double Distance(double[] one, double[] other) => one.Zip(other, (a, b) => (a - b) * (a - b)).Sum();

    private static double? Log(SimulatedCoil coil, string quantity) =>
        coil.Readings.FirstOrDefault(reading => reading.Quantity == quantity) is { Si: > 0 } read ? Math.Log(read.Comparable()) : null;

    private static double? Middle(IReadOnlyList<double?> values)
    {
        double[] known = [.. values.OfType<double>().Order()];
        return known.Length == 0 ? null : (known[(known.Length - 1) / 2] + known[known.Length / 2]) / 2;
    }
}
