using System.Numerics;

namespace Coilwright.Physics.Fields;

/// <summary>Flux that the charges of the permeable parts link with each winding, for any permeabilities, real or complex.</summary>
/// <remarks>
/// Charges solve (Λ − K)σ = n·H with λ = (µ + 1)/(2(µ − 1)) on the diagonal; only Λ knows the permeability. For a sweep the system is projected on
/// the directions that real solves reach from the windings' fields, one material at a time, so that each further frequency costs a small solve.
/// </remarks>
internal sealed class CoreSweep
{
    public const double Mu0 = 4e-7 * Math.PI;

    /// <summary>What a susceptibility of zero is taken for, so that one matrix serves magnetised parts of permeability 1 too.</summary>
    public const double LeastSusceptibility = 1e-9;

    private readonly SurfaceSystem _system;
    private readonly double[] _kernel;
    private readonly double[][] _drive, _link;
    private (double[] Lambda, DenseLu Factors)? _factored;
    private double[,]? _kernelIn, _driveIn, _linkIn;
    private double[][,] _materialIn = [];

    /// <param name="system">The unknowns.</param>
    /// <param name="kernel">Its kernel.</param>
    /// <param name="windings">Drive and potential of each winding per ampere-turn.</param>
    public CoreSweep(SurfaceSystem system, double[] kernel, IReadOnlyList<(double[] Drive, double[] Potential)> windings)
    {
        (_system, _kernel) = (system, kernel);
        _drive = [.. windings.Select(winding => winding.Drive)];
        _link = [.. windings.Select(winding => winding.Potential.Select((psi, i) => -Mu0 * psi * system.Weight[i]).ToArray())];
    }

    /// <summary>Charges per ampere-turn of each winding at real permeabilities, one per material.</summary>
    public double[][] Charges(double[] permeability)
    {
        DenseLu factors = Factor([.. permeability.Select(mu => Lambda(mu).Real)]);
        double[][] charges = new double[_drive.Length][];
        for (int w = 0; w < charges.Length; w++)
        {
            charges[w] = (double[])_drive[w].Clone();
            factors.Solve(charges[w]);
        }

        return charges;
    }

    /// <summary>Charges of the magnets alone, A/m, at real permeabilities, one per material.</summary>
    public double[] MagnetCharges(double[] permeability)
    {
        double[] charges = _system.MagnetDrive(permeability);
        Factor([.. permeability.Select(mu => Lambda(mu).Real)]).Solve(charges);
        return charges;
    }

    /// <summary>Linkage per turn of each winding per ampere-turn of each, H, from the charges.</summary>
    public double[,] Linkage(double[][] charges)
    {
        double[,] linkage = new double[_link.Length, charges.Length];
        for (int p = 0; p < _link.Length; p++)
        {
            for (int q = 0; q < charges.Length; q++)
            {
                linkage[p, q] = Rows.Dot(_link[p], charges[q]);
            }
        }

        return linkage;
    }

    /// <summary>Prepares the projection.</summary>
    /// <param name="permeability">Real permeability of each material about which to project.</param>
    /// <param name="perStart">Directions kept per winding and material.</param>
    public void Project(double[] permeability, int perStart)
    {
        // A material that is all but unmagnetic statically needs a finite place to start from.
        DenseLu factors = Factor([.. permeability.Select(mu => mu < 1.05 ? -2 : Lambda(mu).Real)]);
        List<double[]> basis = Basis(factors, perStart * _drive.Length * _system.Materials.Count);
        int k = basis.Count, n = _system.Count;
        (_kernelIn, _driveIn, _linkIn) = (new double[k, k], new double[k, _drive.Length], new double[_link.Length, k]);
        _materialIn = [.. _system.Materials.Select(_ => new double[k, k])];
        double[] image = new double[n];
        for (int j = 0; j < k; j++)
        {
            for (int i = 0; i < n; i++)
            {
                image[i] = Rows.Dot(_kernel.AsSpan(i * n, n), basis[j]);
            }

            for (int i = 0; i < k; i++)
            {
                _kernelIn[i, j] = Rows.Dot(basis[i], image);
                ByMaterial(basis[i], basis[j], i, j);
            }

            for (int w = 0; w < _drive.Length; w++)
            {
                _driveIn[j, w] = Rows.Dot(basis[j], _drive[w]);
                _linkIn[w, j] = Rows.Dot(basis[j], _link[w]);
            }
        }
    }

    /// <summary>Linkage as from charges, at complex permeabilities, one per material, through the projection.</summary>
    public Complex[,] Linkage(Complex[] permeability)
    {
        int k = _kernelIn!.GetLength(0), windings = _drive.Length;
        Complex[,] matrix = new Complex[k, k], right = new Complex[k, windings];
        Complex[] lambda = [.. permeability.Select(Lambda)];
        for (int i = 0; i < k; i++)
        {
            for (int j = 0; j < k; j++)
            {
                Complex sum = -_kernelIn[i, j];
                for (int m = 0; m < lambda.Length; m++)
                {
                    sum += lambda[m] * _materialIn[m][i, j];
                }

                matrix[i, j] = sum;
            }

            for (int w = 0; w < windings; w++)
            {
                right[i, w] = _driveIn![i, w];
            }
        }

        ComplexLu.Solve(matrix, right);
        return Gather(right, k, windings);
    }

    private Complex[,] Gather(Complex[,] solution, int k, int windings)
    {
        Complex[,] linkage = new Complex[windings, windings];
        for (int p = 0; p < windings; p++)
        {
            for (int q = 0; q < windings; q++)
            {
                Complex sum = 0;
                for (int i = 0; i < k; i++)
                {
                    sum += _linkIn![p, i] * solution[i, q];
                }

                linkage[p, q] = sum;
            }
        }

        return linkage;
    }

    private static Complex Lambda(Complex mu)
    {
        Complex susceptibility = mu - 1;
        return (mu + 1) / (2 * (susceptibility.Magnitude < LeastSusceptibility ? LeastSusceptibility : susceptibility));
    }

    private DenseLu Factor(double[] lambda)
    {
        if (_factored is { } last && last.Lambda.AsSpan().SequenceEqual(lambda))
        {
            return last.Factors;
        }

        int n = _system.Count;
        double[] matrix = new double[n * n];
        for (int i = 0; i < matrix.Length; i++)
        {
            matrix[i] = -_kernel[i];
        }

        for (int i = 0; i < n; i++)
        {
            matrix[i * n + i] += lambda[_system.Material[i]];
        }

        DenseLu factors = new(matrix, n);
        _factored ??= (lambda, factors);
        return factors;
    }

    /// <summary>Orthonormal directions: solves of each winding's field cut to one material, then solves of those, breadth first.</summary>
    private List<double[]> Basis(DenseLu factors, int most)
    {
        List<double[]> basis = [];
        for (int source = -_drive.Length; source < basis.Count && basis.Count < most; source++)
        {
            double[] from = source < 0 ? _drive[source + _drive.Length] : basis[source];
            for (int m = 0; m < _system.Materials.Count && basis.Count < most; m++)
            {
                double[] next = new double[from.Length];
                for (int i = 0; i < next.Length; i++)
                {
                    next[i] = _system.Material[i] == m ? from[i] : 0;
                }

                factors.Solve(next);
                Orthonormalise(next, basis);
            }
        }

        return basis;
    }

    private static void Orthonormalise(double[] vector, List<double[]> basis)
    {
        double before = Math.Sqrt(Rows.Dot(vector, vector));
        for (int pass = 0; pass < 2; pass++)
        {
            foreach (double[] direction in basis)
            {
                Rows.Subtract(vector, direction, Rows.Dot(vector, direction));
            }
        }

        double left = Math.Sqrt(Rows.Dot(vector, vector));
        if (left > 1e-9 * before && before > 0)
        {
            for (int i = 0; i < vector.Length; i++)
            {
                vector[i] /= left;
            }

            basis.Add(vector);
        }
    }

    private void ByMaterial(double[] one, double[] other, int row, int column)
    {
        for (int i = 0; i < one.Length; i++)
        {
            _materialIn[_system.Material[i]][row, column] += one[i] * other[i];
        }
    }
}
