using System.Collections.Concurrent;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>Median and spread of some values with any one of them left out, without sorting anew for each.</summary>
internal sealed class LeaveOneOut
{
    private readonly double[] _sorted;
    private readonly Dictionary<int, double> _valueOf;

    /// <summary>Distances from a middle, sorted. Leaving one out moves the middle to one of three places.</summary>
    private readonly ConcurrentDictionary<double, double[]> _distances = new();

    public LeaveOneOut(IEnumerable<(int Place, double Value)> values)
    {
        _valueOf = values.ToDictionary(one => one.Place, one => one.Value);
        _sorted = [.. _valueOf.Values.Order()];
    }

    /// <summary>Number, median and median distance from it of all values but that at a place.</summary>
    public (int Count, double Median, double Distance) Without(int place)
    {
        bool among = _valueOf.TryGetValue(place, out double value);
        int count = _sorted.Length - (among ? 1 : 0);
        if (count == 0)
        {
            return (0, 0, 0);
        }

        double median = Middle(_sorted, among ? value : null);
        double[] distances = _distances.GetOrAdd(median, middle => [.. _sorted.Select(one => Math.Abs(one - middle)).Order()]);
        return (count, median, Middle(distances, among ? Math.Abs(value - median) : null));
    }

    private static double Middle(double[] sorted, double? without)
    {
        int left = without is { } gone ? Array.BinarySearch(sorted, gone) : sorted.Length,
            count = sorted.Length - (without is null ? 0 : 1);
        double At(int n) => sorted[n < left ? n : n + 1];
        return (At((count - 1) / 2) + At(count / 2)) / 2;
    }
}
