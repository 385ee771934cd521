namespace Coilwright.Analysis.Solving;

/// <summary>
/// The quantities of one family and wire along the turns: evaluated at some counts, a cubic between them gives every whole count.
/// </summary>
internal sealed class DesignCurve
{
    /// <summary>Counts evaluated, evenly spaced in their logarithm: of what fits, and of what does not.</summary>
    private const int Nodes = 49;
    private const int NodesBeyond = 9;

    private readonly double _start;
    private readonly double _step;
    private readonly double[][] _values;
    private readonly bool[] _logarithmic;

    /// <param name="family">Place of the family.</param>
    /// <param name="wire">Place of the wire.</param>
    /// <param name="fewest">Fewest turns.</param>
    /// <param name="most">Most turns.</param>
    /// <param name="fits">Whether these turns fit their bobbin.</param>
    /// <param name="isLevel">Which quantities are in dB.</param>
    /// <param name="evaluate">All quantities at a count that need not be whole; NaN where one does not exist.</param>
    public DesignCurve(int family, int wire, int fewest, int most, bool fits, IReadOnlyList<bool> isLevel, Func<double, double[]> evaluate)
    {
        (Family, Wire, Fewest, Most, Fits) = (family, wire, fewest, most, fits);
        int several = fits ? Nodes : NodesBeyond,
            nodes = most > fewest ? several : 1;
        _start = Math.Log(fewest);
        _step = nodes > 1 ? Math.Log((double)most / fewest) / (nodes - 1) : 1;
        double TurnsAt(int k)
        {
            if (k == 0)
            {
                return fewest; // the ends exactly, not through their logarithms
            }

            return k == nodes - 1 ? most : Math.Exp(_start + k * _step);
        }

        double[][] at = [.. Enumerable.Range(0, nodes).Select(k => evaluate(TurnsAt(k)))];
        _logarithmic = [.. isLevel.Select((level, q) => !level && at.All(values => !(values[q] <= 0)))];
        _values = [.. isLevel.Select((_, q) => (double[])[.. at.Select(values => _logarithmic[q] ? Math.Log(values[q]) : values[q])])];
    }

    public int Family { get; }
    public int Wire { get; }
    public int Fewest { get; }
    public int Most { get; }
    public bool Fits { get; }

    /// <summary>One quantity at a whole count: Lagrange's cubic through the four nearest nodes in the logarithm of turns.</summary>
    public double Interpolate(int quantity, int turns)
    {
        double[] values = _values[quantity];
        if (values.Length == 1)
        {
            return _logarithmic[quantity] ? Math.Exp(values[0]) : values[0];
        }

        double place = (Math.Log(turns) - _start) / _step;
        int first = Math.Clamp((int)place - 1, 0, values.Length - 4);
        double t = place - first;
        double value =
            values[first] * ((t - 1) * (t - 2) * (t - 3) / -6)
            + values[first + 1] * (t * (t - 2) * (t - 3) / 2)
            + values[first + 2] * (t * (t - 1) * (t - 3) / -2)
            + values[first + 3] * (t * (t - 1) * (t - 2) / 6);
        return _logarithmic[quantity] ? Math.Exp(value) : value;
    }
}
