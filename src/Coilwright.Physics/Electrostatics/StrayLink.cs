namespace Coilwright.Physics.Electrostatics;

/// <summary>
/// Capacitance from one winding to one group of parts, or to another winding's outside, for each set of assumptions: with the moments of
/// the depth of the turns that face it, 0 at the start and 1 at the finish.
/// </summary>
internal sealed class StrayLink
{
    private readonly double[] _farad = new double[StrayCase.All.Count];
    private readonly double[] _byDepth = new double[StrayCase.All.Count];
    private readonly double[] _byDepthSquared = new double[StrayCase.All.Count];

    public void Add(int which, double farad, double depth)
    {
        _farad[which] += farad;
        _byDepth[which] += farad * depth;
        _byDepthSquared[which] += farad * depth * depth;
    }

    public double Farad(int which) => _farad[which];

    /// <summary>Charge per volt of the whole pickup that the winding puts on a part at no potential.</summary>
    public double Charge(int which, CoilVoltage coil) => _farad[which] * coil.Start + _byDepth[which] * (coil.Finish - coil.Start);

    /// <summary>Σ C·(v − u)²: what the link adds across the pickup's wires, F.</summary>
    public double Energy(int which, CoilVoltage coil, double other)
    {
        double start = coil.Start - other,
            drop = coil.Finish - coil.Start;
        return _farad[which] * start * start + 2 * _byDepth[which] * start * drop + _byDepthSquared[which] * drop * drop;
    }
}

/// <summary>Share of the pickup's voltage at a winding's start and at its finish; 0 is ground and 1 the hot wire.</summary>
internal readonly record struct CoilVoltage(double Start, double Finish)
{
    public CoilVoltage Turned => new(Finish, Start);
}
