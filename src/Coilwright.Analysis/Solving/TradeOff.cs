namespace Coilwright.Analysis.Solving;

/// <summary>The designs that no other beats in every axis.</summary>
public static class TradeOff
{
    /// <summary>Places of the points on the front of two or three axes; of equal points the first.</summary>
    /// <param name="count">Points.</param>
    /// <param name="axes">One function a axis, from place to a value of which more is better; finite.</param>
    /// <remarks>
    /// Sorted by the first axis, then swept with the staircase of the other two (H. T. Kung, F. Luccio and F. P. Preparata 1975, from
    /// memory).
    /// </remarks>
    public static IReadOnlyList<int> Front(int count, IReadOnlyList<Func<int, double>> axes)
    {
        int[] order = [.. Enumerable.Range(0, count)];
        double[] first = [.. order.Select(axes[0])],
            second = [.. order.Select(axes[1])];
        double[] third = axes.Count > 2 ? [.. order.Select(axes[2])] : new double[count];
        Array.Sort(order, (a, b) =>
        {
            int by = first[b].CompareTo(first[a]);
            by = by != 0 ? by : second[b].CompareTo(second[a]);
            by = by != 0 ? by : third[b].CompareTo(third[a]);
            return by != 0 ? by : a.CompareTo(b);
        });
        List<(double Second, double Third)> stairs = [];
        List<int> front = [];
        foreach (int place in order)
        {
            if (Climb(stairs, second[place], third[place]))
            {
                front.Add(place);
            }
        }

        return front;
    }

    /// <summary>
    /// At most <paramref name="size"/> points that cover a front: the ends of each axis, then always the one farthest from those taken,
    /// axes scaled to their ranges.
    /// </summary>
    public static IReadOnlyList<int> Thin(IReadOnlyList<int> front, IReadOnlyList<Func<int, double>> axes, int size)
    {
        if (front.Count <= size)
        {
            return front;
        }

        double[][] at = [.. front.Select(place => (double[])[.. axes.Select(axis => axis(place))])];
        double[] low = [.. axes.Select((_, a) => at.Min(point => point[a]))],
            range = [.. axes.Select((_, a) => Math.Max(1e-300, at.Max(point => point[a]) - low[a]))];
        double[] distance = new double[at.Length];
        Array.Fill(distance, double.PositiveInfinity);
        List<int> taken = [];
        for (int a = 0; a < axes.Count && taken.Count < size; a++)
        {
            int axis = a;
            Take(Enumerable.Range(0, at.Length).MaxBy(k => at[k][axis]));
        }

        while (taken.Count < size)
        {
            Take(Array.IndexOf(distance, distance.Max()));
        }

        return [.. taken.Distinct().Select(k => front[k]).OrderByDescending(place => axes[0](place))];

        void Take(int chosen)
        {
            taken.Add(chosen);
            for (int k = 0; k < at.Length; k++)
            {
                double sum = 0;
                for (int a = 0; a < range.Length; a++)
                {
                    double off = (at[k][a] - at[chosen][a]) / range[a];
                    sum += off * off;
                }

                distance[k] = Math.Min(distance[k], sum);
            }
        }
    }

    /// <summary>
    /// True when nothing taken before is at least as good in both; keeps the stairs rising in the second and falling in the third.
    /// </summary>
    private static bool Climb(List<(double Second, double Third)> stairs, double second, double third)
    {
        int low = 0,
            high = stairs.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = stairs[middle].Second < second ? (middle + 1, high) : (low, middle);
        }

        // From here on every stair is at least as good in the second; the first of them is the best in the third.
        if (low < stairs.Count && stairs[low].Third >= third)
        {
            return false;
        }

        int end = low < stairs.Count && stairs[low].Second <= second ? low + 1 : low,
            begin = low;
        while (begin > 0 && stairs[begin - 1].Third <= third)
        {
            begin--;
        }

        stairs.RemoveRange(begin, end - begin);
        stairs.Insert(begin, (second, third));
        return true;
    }
}
