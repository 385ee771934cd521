using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Physics.Strings;

/// <summary>
/// A string magnetised by a field along it: the axial magnetisation, and how it answers small changes of the field. SI units.
/// </summary>
/// <remarks>
/// The magnetisation is piecewise linear; its charge, −dM/dy per volume, lies on the wire's surface and acts back on the axis through
/// 1/√(d² + ρ²). M = f(H0 + N·M) is solved by damped Newton steps. Across, the wire is a long cylinder: M = 2χ/(χ + 2)·H. Checked against
/// 3-D finite elements for a linear wire (docs/evidence.md); the saturating law has no such check.
/// </remarks>
public sealed class MagnetisedString
{
    private const double Mu0 = 4e-7 * Math.PI;
    private const int MostSteps = 60;
    private readonly StringModel _string;
    private readonly int _inner;
    private readonly double[] _slope,
        _back;

    private MagnetisedString(StringModel model, StringGrid grid)
    {
        (_string, Grid, _inner) = (model, grid, grid.YM.Length - 2);
        AxialAPerM = new double[grid.YM.Length];
        _slope = new double[_inner];
        _back = BackAction(grid, model.CoreDiameterM / 2);
    }

    /// <summary>Places along the string at which it was solved.</summary>
    public StringGrid Grid { get; }

    /// <summary>Magnetisation along the string at the places of the grid, A/m.</summary>
    public double[] AxialAPerM { get; }

    /// <summary>True when the steps came to rest; a result that did not must not be used.</summary>
    public bool Converged { get; private set; }

    /// <summary>Susceptibility across the wire: 2χ/(χ + 2).</summary>
    public double TransverseSusceptibility => 2 * Susceptibility / (Susceptibility + 2);

    /// <summary>Section of the core, m².</summary>
    public double SectionM2 => Math.PI / 4 * _string.CoreDiameterM * _string.CoreDiameterM;

    private double Susceptibility => _string.RelativePermeability.Value - 1;

    /// <summary>Solves for the magnetisation in a field.</summary>
    /// <param name="model">The string.</param>
    /// <param name="grid">Where to solve.</param>
    /// <param name="axialAPerM">Field along the string at each place, A/m, without the string.</param>
    public static MagnetisedString In(StringModel model, StringGrid grid, double[] axialAPerM)
    {
        MagnetisedString wire = new(model, grid);
        wire.Solve(axialAPerM);
        return wire;
    }

    /// <summary>
    /// Weights w with Σ w·δH0 = δ(Σ v·M): the answer of a sum over the magnetisation to a small change of the field along the string.
    /// </summary>
    /// <param name="weight">v at each place.</param>
    public double[] Adjoint(double[] weight)
    {
        double[] transposed = new double[_inner * _inner];
        for (int i = 0; i < _inner; i++)
        {
            for (int j = 0; j < _inner; j++)
            {
                transposed[j * _inner + i] = (i == j ? 1 : 0) - _slope[i] * _back[i * _inner + j];
            }
        }

        double[] adjoint = new double[_inner + 2];
        Span<double> inside = adjoint.AsSpan(1, _inner);
        weight.AsSpan(1, _inner).CopyTo(inside);
        new DenseLu(transposed, _inner).Solve(inside);
        for (int i = 0; i < _inner; i++)
        {
            inside[i] *= _slope[i];
        }

        return adjoint;
    }

    private void Solve(double[] axial)
    {
        double scale = Susceptibility * Math.Max(1, axial.Max(Math.Abs)),
            left = double.PositiveInfinity;
        double[] m = new double[_inner],
            f = new double[_inner],
            next = new double[_inner],
            misfit = new double[_inner],
            change = new double[_inner];
        Misfit(axial, m, f);
        for (int step = 0; step < MostSteps; step++)
        {
            left = Math.Sqrt(Rows.Dot(f, f));
            if (left < 1e-9 * scale)
            {
                break;
            }

            f.CopyTo(change, 0);
            new DenseLu(Jacobian(), _inner).Solve(change);
            for (double part = 1; part > 1e-4; part /= 2)
            {
                m.CopyTo(next, 0);
                Rows.Subtract(next, change, part);
                Misfit(axial, next, misfit);
                if (Rows.Dot(misfit, misfit) <= left * left)
                {
                    break;
                }
            }

            (m, next, f, misfit) = (next, m, misfit, f);
        }

        Converged = left < 1e-6 * scale;
        m.CopyTo(AxialAPerM, 1);
    }

    /// <summary>M − f(H0 + N·M) at the inner places; leaves the slopes of f behind.</summary>
    private void Misfit(double[] axial, double[] m, double[] misfit)
    {
        double saturation = _string.SaturationT / Mu0,
            chi = Susceptibility;
        for (int i = 0; i < _inner; i++)
        {
            double h = axial[i + 1] + Rows.Dot(_back.AsSpan(i * _inner, _inner), m);
            double bend = _string.Law == StringLaw.Linear ? 1 : 1 + chi * Math.Abs(h) / saturation;
            _slope[i] = chi / (bend * bend);
            misfit[i] = m[i] - chi * h / bend;
        }
    }

    private double[] Jacobian()
    {
        double[] jacobian = new double[_inner * _inner];
        for (int i = 0; i < _inner; i++)
        {
            Rows.Subtract(jacobian.AsSpan(i * _inner, _inner), _back.AsSpan(i * _inner, _inner), _slope[i]);
            jacobian[i * _inner + i] += 1;
        }

        return jacobian;
    }

    /// <summary>
    /// Field on the axis at each inner place per unit magnetisation of each, row-major; on a half grid with the mirror image's.
    /// </summary>
    private static double[] BackAction(StringGrid grid, double radius)
    {
        double[] y = grid.YM;
        int inner = y.Length - 2;
        double quarter = radius * radius / 4; // π·ρ²/(4π)
        double Tube(double apart) => 1 / Math.Sqrt(apart * apart + radius * radius);
        double[] back = new double[inner * inner];
        for (int i = 1; i <= inner; i++)
        {
            double near = Tube(y[i] - y[0]),
                mirrored = Tube(y[i] + y[0] - 2 * y[0]);
            for (int s = 0; s <= inner; s++)
            {
                double nextNear = Tube(y[i] - y[s + 1]),
                    nextMirrored = Tube(y[i] + y[s + 1] - 2 * y[0]);
                double difference = nextNear - near + (grid.IsHalf ? mirrored - nextMirrored : 0);
                double perSlope = -quarter * difference / (y[s + 1] - y[s]);
                (near, mirrored) = (nextNear, nextMirrored);
                if (s > 0)
                {
                    back[(i - 1) * inner + s - 1] -= perSlope;
                }

                if (s < inner)
                {
                    back[(i - 1) * inner + s] += perSlope;
                }
            }
        }

        return back;
    }
}
