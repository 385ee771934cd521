namespace Coilwright.Physics.Winding;

/// <summary>The turns that lie already, all of diameter 1, between flanges at x = 0 and x = height, on a former at y = 0.</summary>
internal sealed class LayHeap
{
    private const double Touch = 1e-9; // relative slack that keeps turns which just touch from counting as overlapping
    private const double Level = 1e-7; // heights near level with a turn come from the root of a rounding error: √1e-15, with room
    private const int Former = -1;
    private readonly double _height;
    private readonly List<int>[] _columns; // turns by slice of x one diameter wide, in order of winding
    private readonly List<double>[] _highestSoFar; // per column: highest centre among its turns up to and including this one
    private int _count;

    public LayHeap(int turns, double height)
    {
        X = new double[turns];
        Y = new double[turns];
        _height = height;
        int columns = (int)Math.Ceiling(height);
        _columns = [.. Enumerable.Range(0, columns).Select(_ => new List<int>())];
        _highestSoFar = [.. Enumerable.Range(0, columns).Select(_ => new List<double>())];
    }

    public double[] X { get; }

    public double[] Y { get; }

    /// <summary>Lets one turn down at <paramref name="x"/>; on the very top of another it goes on the way the guide is heading.</summary>
    public void Drop(double x, int heading)
    {
        (int support, double y) = Below(x, double.PositiveInfinity);
        while (support != Former)
        {
            double offset = x - X[support];
            int side = Math.Abs(offset) < Touch ? AwayFromFlange(x, heading) : Math.Sign(offset);
            (int next, x, y, bool held) = Roll(support, x, side);
            if (held)
            {
                break;
            }

            if (next != support)
            {
                support = next; // rolled down one turn onto the far side of another
                continue;
            }

            (support, y) = Below(x, y); // came off the side: falls
        }

        Add(x, y);
    }

    private int AwayFromFlange(double x, int heading)
    {
        if (x < 0.5 + Touch)
        {
            return 1;
        }

        return x > _height - 0.5 - Touch ? -1 : heading;
    }

    /// <summary>
    /// The first thing met when falling at <paramref name="x"/> from centre height <paramref name="from"/>, and the centre height there.
    /// </summary>
    private (int Support, double Y) Below(double x, double from)
    {
        int support = Former;
        double best = 0.5;
        (int first, int last) = Columns(x, 1);
        for (int c = first; c <= last; c++)
        {
            for (int k = _columns[c].Count - 1; k >= 0 && _highestSoFar[c][k] + 1 > best; k--)
            {
                int j = _columns[c][k];
                double dx = Math.Abs(x - X[j]);
                if (dx >= 1 - Touch)
                {
                    continue;
                }

                double y = Y[j] + Math.Sqrt(1 - dx * dx);
                if (y > best && y <= from + Level)
                {
                    (support, best) = (j, y);
                }
            }
        }

        return (support, best);
    }

    /// <summary>
    /// Rolls over <paramref name="support"/> to the given side until something stops it, or until it hangs level with it.
    /// </summary>
    private (int Next, double X, double Y, bool Held) Roll(int support, double x, int side)
    {
        double reached = side * (x - X[support]); // sideways distance rolled so far: 0 on top, 1 level
        double limit = Math.Min(1, side > 0 ? _height - 0.5 - X[support] : X[support] - 0.5);
        bool flange = limit < 1 - Touch;
        double stop = limit;
        int other = support;
        (int first, int last) = Columns(X[support] + side, 1.5);
        for (int c = first; c <= last; c++)
        {
            for (int k = _columns[c].Count - 1; k >= 0 && _highestSoFar[c][k] > Y[support] - 1 - Touch; k--)
            {
                double meets = MeetingOffset(support, _columns[c][k], side);
                if (meets >= reached - Level && meets < stop)
                {
                    (other, stop) = (_columns[c][k], meets);
                }
            }
        }

        double newX = X[support] + side * stop;
        double newY = Y[support] + Math.Sqrt(Math.Max(0, 1 - stop * stop));
        bool between = other != support && side * (X[other] - newX) > 0;
        return (other, newX, newY, between || (other == support && flange));
    }

    /// <summary>
    /// Sideways offset from <paramref name="j"/> at which a turn rolling over it to one side touches <paramref name="k"/>; NaN if it does
    /// not.
    /// </summary>
    private double MeetingOffset(int j, int k, int side)
    {
        double dx = side * (X[k] - X[j]);
        double dy = Y[k] - Y[j];
        double squared = dx * dx + dy * dy;
        if (k == j || dx <= 0 || squared >= 4)
        {
            return double.NaN;
        }

        // The two circles of radius 1 about j and k cross at the middle ± h along the normal; rolling from above meets the upper-left
        // crossing first.
        double h = Math.Sqrt(1 / squared - 0.25);
        double offset = dx / 2 - dy * h;
        double rise = dy / 2 + dx * h;
        return rise < -Touch ? double.NaN : offset;
    }

    private void Add(double x, double y)
    {
        X[_count] = x;
        Y[_count] = y;
        int c = Math.Clamp((int)x, 0, _columns.Length - 1);
        _highestSoFar[c].Add(_columns[c].Count == 0 ? y : Math.Max(y, _highestSoFar[c][^1]));
        _columns[c].Add(_count);
        _count++;
    }

    /// <summary>Adds the pairs that turn <paramref name="i"/>, just laid, forms with earlier ones.</summary>
    public void AppendNeighbours(int i, double reach, double scaleM, List<NeighbourPair> pairs)
    {
        (int first, int last) = Columns(X[i], reach);
        for (int c = first; c <= last; c++)
        {
            for (int k = _columns[c].Count - 1; k >= 0 && _highestSoFar[c][k] > Y[i] - reach; k--)
            {
                int j = _columns[c][k];
                double dx = X[i] - X[j];
                double dy = Y[i] - Y[j];
                double squared = dx * dx + dy * dy;
                if (j != i && squared < reach * reach)
                {
                    pairs.Add(new(j, i, Math.Max(0, Math.Sqrt(squared) - 1) * scaleM));
                }
            }
        }
    }

    /// <summary>
    /// Top of the highest turn in each of so many equal slices of the window, averaged; a slice with no turn in it counts nothing.
    /// </summary>
    public double MeanTop(int slices)
    {
        double[] tops = new double[slices];
        for (int i = 0; i < _count; i++)
        {
            int slice = Math.Clamp((int)(X[i] / _height * slices), 0, slices - 1);
            tops[slice] = Math.Max(tops[slice], Y[i] + 0.5);
        }

        return tops.Average();
    }

    private (int First, int Last) Columns(double x, double reach) =>
        (Math.Max(0, (int)Math.Floor(x - reach)), Math.Min(_columns.Length - 1, (int)Math.Floor(x + reach)));
}
