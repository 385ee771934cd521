namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>Second moments of a panel's volume about its middle, m²: what a far potential needs beside the middle itself.</summary>
internal readonly struct PanelMoments
{
    private readonly double _xx,
        _yy,
        _zz,
        _xy,
        _xz,
        _yz;

    /// <param name="halves">Half extents in three directions at right angles, m; an even body has a third of their squares.</param>
    public PanelMoments(params ReadOnlySpan<Vector3M> halves)
    {
        foreach (Vector3M half in halves)
        {
            _xx += half.XM * half.XM / 3;
            _yy += half.YM * half.YM / 3;
            _zz += half.ZM * half.ZM / 3;
            _xy += half.XM * half.YM / 3;
            _xz += half.XM * half.ZM / 3;
            _yz += half.YM * half.ZM / 3;
        }
    }

    public double Trace => _xx + _yy + _zz;

    /// <summary>v·M·v, m⁴.</summary>
    public double Along(Vector3M v) =>
        _xx * v.XM * v.XM + _yy * v.YM * v.YM + _zz * v.ZM * v.ZM + 2 * (_xy * v.XM * v.YM + _xz * v.XM * v.ZM + _yz * v.YM * v.ZM);
}
