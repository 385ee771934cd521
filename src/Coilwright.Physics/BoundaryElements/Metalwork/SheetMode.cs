namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// One current in the sheets: stream function and area times current density of every panel, and its signs in the other quarters.
/// </summary>
internal sealed class SheetMode
{
    private readonly SheetParity _parity;

    public SheetMode(SheetCut cut, SheetParity parity, double[] values)
    {
        _parity = parity;
        Stream = new double[cut.Panels.Length];
        Current = new Vector3M[cut.Panels.Length];
        for (int k = 0; k < 4 * cut.Panels.Length; k++)
        {
            if (parity.Unknown(k / 4, k % 4) is >= 0 and int node)
            {
                Stream[k / 4] += values[node] / 4;
                Current[k / 4] = Space.Plus(Current[k / 4], Space.Times(SheetParity.Moment(cut.Panels[k / 4], k % 4), values[node]));
            }
        }

        for (int p = 0; p < cut.Panels.Length; p++)
        {
            Current[p] = Space.Times(Current[p], 1 / cut.Panels[p].AreaM2);
        }
    }

    /// <summary>Stream function in the middle of each panel, A.</summary>
    public double[] Stream { get; }

    /// <summary>Current per width on each panel, A/m.</summary>
    public Vector3M[] Current { get; }

    public int Sign(int image) => _parity.Sign(image);
}
