namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// The static field around a solved pickup: of its magnets, and of a direct current in each winding, cores included. Points outside all
/// parts, m.
/// </summary>
public sealed class FieldMap
{
    private readonly SurfaceSystem _system;
    private readonly CoilField[] _windings;
    private readonly double _error;
    private readonly Lazy<double[][]> _charges;
    private readonly Lazy<double[][]> _moved;

    /// <param name="system">The permeable parts.</param>
    /// <param name="windings">The windings.</param>
    /// <param name="windingCharges">Charges per ampere and turn of each winding.</param>
    /// <param name="magnetCharges">Charges of the magnets alone.</param>
    /// <param name="moved">Half of what each material's permeability moves those by, from end to end of its interval.</param>
    /// <param name="error">Stated error of the magnets' field for the cutting of the surfaces, as a fraction (95 %).</param>
    internal FieldMap(
        SurfaceSystem system,
        CoilField[] windings,
        double[][] windingCharges,
        Func<double[]> magnetCharges,
        Func<double[], double[][]> moved,
        double error
    )
    {
        (_system, _windings, _error) = (system, windings, error);
        _charges = new(() => [magnetCharges(), .. windingCharges]);
        _moved = new(() => [_charges.Value[0], .. moved(_charges.Value[0])]);
    }

    /// <summary>Number of windings.</summary>
    public int Windings => _windings.Length;

    /// <summary>Magnets' flux density at a point, T.</summary>
    /// <param name="at">The point in the recipe's axes, m; outside every part.</param>
    /// <returns>The three components, T.</returns>
    public Vector3M MagnetFluxDensityT(Vector3M at)
    {
        Span<Vector3M> fields = stackalloc Vector3M[1];
        _system.AddFieldAt(at.XM, at.YM, at.ZM, [_charges.Value[0]], fields);
        return new Vector3M(CoreSweep.Mu0 * fields[0].XM, CoreSweep.Mu0 * fields[0].YM, CoreSweep.Mu0 * fields[0].ZM);
    }

    /// <summary>
    /// Vertical flux density of the magnets at a point, T, north up positive, with what the permeabilities and the cutting of the surfaces
    /// leave open (95 %).
    /// </summary>
    /// <remarks>
    /// The permeabilities act to first order, each on its own; the strength of the magnets is taken as given, and <see
    /// cref="FieldSolution.DrawnShare"/> comes on top.
    /// </remarks>
    /// <param name="at">The point in the recipe's axes, m; outside every part.</param>
    public Estimate MagnetVerticalT(Vector3M at)
    {
        Span<Vector3M> fields = stackalloc Vector3M[_moved.Value.Length];
        _system.AddFieldAt(at.XM, at.YM, at.ZM, _moved.Value, fields);
        double middle = CoreSweep.Mu0 * fields[0].ZM,
            squares = _error * middle * _error * middle;
        foreach (Vector3M half in fields[1..])
        {
            squares += CoreSweep.Mu0 * half.ZM * CoreSweep.Mu0 * half.ZM;
        }

        double half95 = Math.Sqrt(squares);
        return new Estimate(middle, middle - half95, middle + half95, Basis.Forecast);
    }

    /// <summary>
    /// Field strengths at a point: first of the magnets, A/m, then of each winding, A/m per ampere and turn, counter-clockwise from the
    /// top.
    /// </summary>
    /// <param name="at">The point.</param>
    /// <param name="fields">1 + <see cref="Windings"/> places.</param>
    public void ComputeFields(Vector3M at, Span<Vector3M> fields)
    {
        fields.Clear();
        _system.AddFieldAt(at.XM, at.YM, at.ZM, _charges.Value, fields);
        for (int c = 0; c < _windings.Length; c++)
        {
            Vector3M own = _windings[c].ComputeField(at.XM, at.YM, at.ZM);
            fields[c + 1] = new Vector3M(fields[c + 1].XM + own.XM, fields[c + 1].YM + own.YM, fields[c + 1].ZM + own.ZM);
        }
    }
}
