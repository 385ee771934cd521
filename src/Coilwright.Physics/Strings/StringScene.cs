using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Physics.Strings;

/// <summary>What one string does over a pickup. SI units.</summary>
/// <param name="LinkageWb">Flux that the string at rest sends through the whole winding, Wb.</param>
/// <param name="VerticalWbPerM">Its change with the string's height, Wb/m: times the velocity away from the pickup it is minus the
/// voltage.</param>
/// <param name="SidewaysWbPerM">Its change with the string's place along x, Wb/m.</param>
/// <param name="PullN">Force of the magnets on the string towards the pickup, N.</param>
/// <param name="FluxDensityT">Flux density of the magnets on the string's axis where its vertical part is strongest, T.</param>
/// <param name="Aperture">What a short piece of the string adds by moving up alone (tilt of its neighbours included), Wb/m per metre of
/// string, at the places of the grid; its integral is the vertical change but for the motion across the wire.</param>
/// <param name="Magnetised">The solved string.</param>
public sealed record StringAnswer(
    double LinkageWb,
    double VerticalWbPerM,
    double? SidewaysWbPerM,
    double PullN,
    Vector3M FluxDensityT,
    double[] Aperture,
    MagnetisedString Magnetised
);

/// <summary>
/// Strings over a solved pickup, by reciprocity: linkage = µ0·∫M·h dV with h the winding's field per ampere, cores included.
/// </summary>
/// <remarks>
/// The string's own effect back on the cores is left out; with collocation on the axis that costs 1 to 2 % (against 3-D finite elements).
/// </remarks>
public sealed class StringScene
{
    private const double Mu0 = 4e-7 * Math.PI;

    /// <summary>Step of the differences up and down and sideways, m.</summary>
    private const double StepM = 5e-5;

    private readonly FieldMap _map;
    private readonly double[] _turns;
    private readonly StringGrid _grid;
    private readonly double _strength;

    /// <summary>Strings over one solved field.</summary>
    /// <param name="map">The solved field.</param>
    /// <param name="turns">
    /// Turns of each winding of the field, in its order, signed by winding direction and weighted by the connection.
    /// </param>
    /// <param name="grid">Places along the strings.</param>
    /// <param name="magnetStrength">Factor on the magnets' field.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are more or fewer turns than windings.</exception>
    public StringScene(FieldMap map, IReadOnlyList<double> turns, StringGrid grid, double magnetStrength = 1)
    {
        (_map, _turns, _grid, _strength) = (map, [.. turns], grid, magnetStrength);
        Require.InRange(turns.Count, map.Windings, map.Windings);
    }

    /// <summary>One string along y, its axis at (<paramref name="xM"/>, <paramref name="zM"/>).</summary>
    /// <param name="model">The string.</param>
    /// <param name="xM">Across the strings, m.</param>
    /// <param name="zM">Height of the axis, m; above every pole.</param>
    /// <param name="sideways">False leaves the motion across out, which halves the work.</param>
    public StringAnswer Solve(StringModel model, double xM, double zM, bool sideways = true)
    {
        Samples up = Sample(xM, zM + StepM),
            down = Sample(xM, zM - StepM);
        (Samples Right, Samples Left)? beside = sideways ? (Sample(xM + StepM, zM), Sample(xM - StepM, zM)) : null;
        Samples rest = Samples.Between(up, down);
        MagnetisedString wire = MagnetisedString.In(model, _grid, rest.Magnet.Along);
        double across = wire.TransverseSusceptibility,
            section = wire.SectionM2;
        double[] weight = [.. rest.Coil.Along.Select((h, i) => h * _grid.WeightM[i])],
            adjoint = wire.Adjoint(weight);
        double linkage = 0,
            pull = 0,
            vertical = 0,
            aside = 0;
        // ∂H_y/∂z = ∂H_z/∂y turns the integrand by parts into −(dM/dy·h_z + d(adjoint)/dy·H_z)
        double[] aperture = new double[weight.Length];
        for (int i = 0; i < weight.Length; i++)
        {
            double m = wire.AxialAPerM[i],
                length = _grid.WeightM[i];
            linkage += length * (m * rest.Coil.Along[i] + across * rest.Transverse(i));
            double byHeight = Change(up, down, i, m, adjoint[i], length, across);
            vertical += byHeight;
            aperture[i] =
                -Mu0
                * section
                * (Slope(wire.AxialAPerM, i, perLength: false) * rest.Coil.Up[i] + Slope(adjoint, i, perLength: true) * rest.Magnet.Up[i]);
            aside += beside is { } pair ? Change(pair.Right, pair.Left, i, m, adjoint[i], length, across) : 0;
            pull -=
                length
                * (m * (up.Magnet.Along[i] - down.Magnet.Along[i]) + across / 2 * (up.MagnetTransverse(i) - down.MagnetTransverse(i)))
                / (2 * StepM);
        }

        int strongest = Enumerable.Range(0, weight.Length).MaxBy(i => Math.Abs(rest.Magnet.Up[i]));
        return new StringAnswer(
            Mu0 * section * linkage,
            Mu0 * section * vertical,
            sideways ? Mu0 * section * aside : null,
            Mu0 * section * pull,
            new Vector3M(Mu0 * rest.Magnet.X[strongest], Mu0 * rest.Magnet.Along[strongest], Mu0 * rest.Magnet.Up[strongest]),
            aperture,
            wire
        );
    }

    /// <summary>The linkage alone, Wb: what the string at this place sends through the winding.</summary>
    /// <param name="model">The string.</param>
    /// <param name="xM">Across the strings, m.</param>
    /// <param name="zM">Height of the axis, m; above every pole.</param>
    public double LinkageWb(StringModel model, double xM, double zM)
    {
        Samples rest = Sample(xM, zM);
        MagnetisedString wire = MagnetisedString.In(model, _grid, rest.Magnet.Along);
        double across = wire.TransverseSusceptibility;
        double sum = Enumerable
            .Range(0, _grid.YM.Length)
            .Sum(i => _grid.WeightM[i] * (wire.AxialAPerM[i] * rest.Coil.Along[i] + across * rest.Transverse(i)));
        return Mu0 * wire.SectionM2 * sum;
    }

    /// <summary>
    /// Slope along the string of a quantity given at each place, or given as the sum over the length that each place stands for.
    /// </summary>
    private double Slope(double[] values, int i, bool perLength)
    {
        double[] y = _grid.YM;
        double At(int k) => perLength ? values[k] / _grid.WeightM[k] : values[k];
        int last = y.Length - 1;
        double atStart = _grid.IsHalf ? 0 : At(0);
        return i == 0 ? (At(1) - atStart) / (y[1] - y[0]) : (At(Math.Min(i + 1, last)) - At(i - 1)) / (y[Math.Min(i + 1, last)] - y[i - 1]);
    }

    /// <summary>Change of the linkage's integrand between two displaced places, per metre of displacement.</summary>
    private static double Change(Samples plus, Samples minus, int i, double m, double adjoint, double length, double across) =>
        (
            m * (plus.Coil.Along[i] - minus.Coil.Along[i]) * length
            + adjoint * (plus.Magnet.Along[i] - minus.Magnet.Along[i])
            + across * (plus.Transverse(i) - minus.Transverse(i)) * length
        ) / (2 * StepM);

    private Samples Sample(double xM, double zM)
    {
        int n = _grid.YM.Length;
        Samples samples = new(n);
        Span<Vector3M> fields = stackalloc Vector3M[1 + _map.Windings];
        for (int i = 0; i < n; i++)
        {
            _map.ComputeFields(new Vector3M(xM, _grid.YM[i], zM), fields);
            samples.Magnet.Set(i, fields[0], _strength);
            for (int c = 0; c < _turns.Length; c++)
            {
                samples.Coil.Set(i, fields[c + 1], _turns[c]);
            }
        }

        return samples;
    }

    /// <summary>A field at the places of the grid, by component.</summary>
    private sealed class Along3(int count)
    {
        public double[] X { get; } = new double[count];
        public double[] Along { get; } = new double[count];
        public double[] Up { get; } = new double[count];

        public void Set(int i, Vector3M field, double times)
        {
            X[i] += times * field.XM;
            Along[i] += times * field.YM;
            Up[i] += times * field.ZM;
        }
    }

    /// <summary>Magnets' and winding's field at the places of the grid.</summary>
    private sealed class Samples(int count)
    {
        public Along3 Magnet { get; } = new(count);
        public Along3 Coil { get; } = new(count);

        public double Transverse(int i) => Magnet.X[i] * Coil.X[i] + Magnet.Up[i] * Coil.Up[i];

        public double MagnetTransverse(int i) => Magnet.X[i] * Magnet.X[i] + Magnet.Up[i] * Magnet.Up[i];

        public static Samples Between(Samples one, Samples other)
        {
            Samples middle = new(one.Magnet.X.Length);
            for (int i = 0; i < one.Magnet.X.Length; i++)
            {
                middle.Magnet.Set(i, Mean(one.Magnet, other.Magnet, i), 1);
                middle.Coil.Set(i, Mean(one.Coil, other.Coil, i), 1);
            }

            return middle;
        }

        private static Vector3M Mean(Along3 one, Along3 other, int i) =>
            new((one.X[i] + other.X[i]) / 2, (one.Along[i] + other.Along[i]) / 2, (one.Up[i] + other.Up[i]) / 2);
    }
}
