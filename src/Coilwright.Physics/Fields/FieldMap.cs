namespace Coilwright.Physics.Fields;

/// <summary>The static field around a solved pickup: of its magnets, and of a direct current in each winding, cores included. Points outside all parts, m.</summary>
public sealed class FieldMap
{
    private readonly SurfaceSystem _system;
    private readonly CoilField[] _windings;
    private readonly Lazy<double[][]> _charges;

    internal FieldMap(SurfaceSystem system, CoilField[] windings, double[][] windingCharges, Func<double[]> magnetCharges)
    {
        (_system, _windings) = (system, windings);
        _charges = new(() => [magnetCharges(), .. windingCharges]);
    }

    /// <summary>Number of windings.</summary>
    public int Windings => _windings.Length;

    /// <summary>Magnets' flux density at a point, T.</summary>
    public Vector3M MagnetFluxDensityT(Vector3M at)
    {
        Span<Vector3M> fields = stackalloc Vector3M[1];
        _system.AddFieldAt(at.XM, at.YM, at.ZM, [_charges.Value[0]], fields);
        return new Vector3M(CoreSweep.Mu0 * fields[0].XM, CoreSweep.Mu0 * fields[0].YM, CoreSweep.Mu0 * fields[0].ZM);
    }

    /// <summary>Field strengths at a point: first of the magnets, A/m, then of each winding, A/m per ampere and turn, counter-clockwise from the top.</summary>
    /// <param name="at">The point.</param>
    /// <param name="fields">1 + <see cref="Windings"/> places.</param>
    public void At(Vector3M at, Span<Vector3M> fields)
    {
        fields.Clear();
        _system.AddFieldAt(at.XM, at.YM, at.ZM, _charges.Value, fields);
        for (int c = 0; c < _windings.Length; c++)
        {
            Vector3M own = _windings[c].At(at.XM, at.YM, at.ZM);
            fields[c + 1] = new Vector3M(fields[c + 1].XM + own.XM, fields[c + 1].YM + own.YM, fields[c + 1].ZM + own.ZM);
        }
    }
}
