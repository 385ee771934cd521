using System.Numerics;

namespace Coilwright.Physics.BoundaryElements;

/// <summary>Flux that the charges of the permeable parts link with each winding, for any permeabilities, real or complex.</summary>
/// <remarks>
/// Charges solve (Λ − K)σ = n·H with λ = (µ + 1)/(2(µ − 1)) on the diagonal; only Λ knows the permeability. For a sweep the system is
/// projected on
/// the directions that real solves reach from the windings' fields, one material at a time, so that each further frequency costs a small
/// solve.
/// </remarks>
internal sealed class CoreSweep
{
    public const double Mu0 = 4e-7 * Math.PI;

    /// <summary>What a susceptibility of zero is taken for, so that one matrix serves magnetised parts of permeability 1 too.</summary>
    public const double LeastSusceptibility = 1e-9;

    private readonly SurfaceSystem _system;
    private readonly double[] _kernel;
    private readonly double[][] _drive,
        _link;
    private readonly CancellationToken _cancel;
    private (double[] Lambda, DenseLu Factors)? _factored;
    private (double[] Lambda, DenseLu Factors)? _start;
    private double[,]? _kernelIn,
        _driveIn,
        _linkIn;
    private double[][,] _materialIn = [];

    /// <param name="system">The unknowns.</param>
    /// <param name="kernel">Its kernel.</param>
    /// <param name="windings">Drive and potential of each winding per ampere-turn.</param>
    /// <param name="cancel">Stops a factoring.</param>
    public CoreSweep(
        SurfaceSystem system,
        double[] kernel,
        IReadOnlyList<(double[] Drive, double[] Potential)> windings,
        CancellationToken cancel
    )
    {
        (_system, _kernel, _cancel) = (system, kernel, cancel);
        _drive = [.. windings.Select(winding => winding.Drive)];
        _link = [.. windings.Select(winding => winding.Potential.Select((psi, i) => -Mu0 * psi * system.Weight[i]).ToArray())];
    }

    private CoreSweep(CoreSweep windings, IReadOnlyList<(double[] Drive, double[] Potential)> sources)
        : this(windings._system, windings._kernel, sources, windings._cancel)
    {
        _drive = [.. windings._drive, .. _drive];
        _link = [.. windings._link, .. _link];
        _factored = windings._factored;
    }

    /// <summary>The same parts with further sources behind the windings; what was factored serves on.</summary>
    public CoreSweep With(IReadOnlyList<(double[] Drive, double[] Potential)> sources) => new(this, sources);

    /// <summary>The same parts in other windings; what was factored serves on.</summary>
    public CoreSweep For(IReadOnlyList<(double[] Drive, double[] Potential)> windings) =>
        new(_system, _kernel, windings, _cancel) { _factored = _factored, _start = _start };

    /// <summary>Charges per ampere-turn of each winding at real permeabilities, one per material.</summary>
    public double[][] Charges(double[] permeability)
    {
        DenseLu factors = Factor([.. permeability.Select(mu => Lambda(mu).Real)]);
        double[][] charges = [.. _drive.Select(drive => (double[])drive.Clone())];
        factors.Solve(charges);
        return charges;
    }

    /// <summary>Charges of the magnets alone, A/m, at real permeabilities, one per material.</summary>
    public double[] MagnetCharges(double[] permeability)
    {
        double[] charges = _system.MagnetDrive(permeability);
        Factor([.. permeability.Select(mu => Lambda(mu).Real)]).Solve(charges);
        return charges;
    }

    /// <summary>
    /// Half of what each material's permeability moves charges by, from end to end of its interval, to first order; exact ones are left
    /// out.
    /// </summary>
    /// <param name="charges">Charges at the middle of all intervals: of magnets, or of a winding.</param>
    /// <param name="magnets">True for the charges of the magnets.</param>
    /// <remarks>
    /// With λ = 1/2 + 1/(µ − 1) the source of a magnet is P/µ0·(λ − 1/2), that of a winding does not know λ: all is straight in λ,
    /// so dσ = A⁻¹(P/µ0 − σ)·dλ on the material's own elements (P = 0 for a winding), with the factors there are. A body of demagnetising
    /// factor N answers
    /// as 1/(1/(µ − 1) + N), which bends over a wide interval; the change is bent alike with the N of a slender rod.
    /// </remarks>
    public List<double[]> Moves(double[] charges, bool magnets)
    {
        List<double[]> moves = [];
        double[] middle = [.. _system.Materials.Select(material => material.RelativePermeability.Value)];
        double[] source = magnets ? _system.MagnetDrive([.. middle.Select(_ => 2.0)]) : new double[_system.Count];
        for (int m = 0; m < middle.Length; m++)
        {
            Estimate mu = _system.Materials[m].RelativePermeability;
            if (!mu.IsExact && mu.Value - 1 > LeastSusceptibility)
            {
                double change = HalfChange(mu);
                moves.Add([.. charges.Select((charge, u) => _system.Material[u] == m ? (source[u] - charge) * change : 0)]);
            }
        }

        if (moves.Count > 0)
        {
            Factor([.. middle.Select(mu => Lambda(mu).Real)]).Solve(moves);
        }

        return moves;
    }

    private static double HalfChange(Estimate mu)
    {
        const double N = 0.03;
        double Slack(double at) => 1 / Math.Max(LeastSusceptibility, at - 1);
        double low = Slack(mu.Low),
            middle = Slack(mu.Value),
            high = Slack(mu.High);
        return (high - low) / 2 * (middle + N) * (middle + N) / ((low + N) * (high + N));
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
    /// <param name="most">Directions kept.</param>
    public void Project(double[] permeability, int most)
    {
        // A material that is all but unmagnetic statically needs a finite place to start from.
        double[] lambda = [.. permeability.Select(mu => mu < 1.05 ? -2 : Lambda(mu).Real)];
        DenseLu factors = _start is { } kept && kept.Lambda.AsSpan().SequenceEqual(lambda) ? kept.Factors : Factor(lambda);
        _start = (lambda, factors);
        SweepBasis basis = new(_system.Count, most);
        basis.Grow(_drive, factors, lambda, _system.Material);
        int k = basis.Count;
        (_kernelIn, _driveIn, _linkIn) = (new double[k, k], new double[k, _drive.Length], new double[_link.Length, k]);
        _materialIn = [.. lambda.Select(_ => new double[k, k])];
        for (int j = 0; j < k; j++)
        {
            for (int i = 0; i < k; i++)
            {
                _kernelIn[i, j] = Rows.Dot(basis[i], basis.ImageOf(j));
            }

            for (int w = 0; w < _drive.Length; w++)
            {
                _driveIn[j, w] = Rows.Dot(basis[j], _drive[w]);
                _linkIn[w, j] = Rows.Dot(basis[j], _link[w]);
            }
        }

        ByMaterial(basis);
    }

    /// <summary>Linkage as from charges, at complex permeabilities, one per material, through the projection.</summary>
    public Complex[,] Linkage(Complex[] permeability)
    {
        int k = _kernelIn!.GetLength(0),
            windings = _drive.Length;
        Complex[,] matrix = new Complex[k, k],
            right = new Complex[k, windings];
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

        DenseLu factors = new(matrix, n, _cancel);
        _factored ??= (lambda, factors);
        return factors;
    }

    /// <summary>Products of the directions over the unknowns of each material, run by run.</summary>
    private void ByMaterial(SweepBasis basis)
    {
        int[] material = _system.Material;
        for (int from = 0, to; from < material.Length; from = to)
        {
            to = from + 1;
            while (to < material.Length && material[to] == material[from])
            {
                to++;
            }

            double[,] sums = _materialIn[material[from]];
            for (int i = 0; i < basis.Count; i++)
            {
                for (int j = 0; j <= i; j++)
                {
                    sums[i, j] += Rows.Dot(basis[i].AsSpan(from, to - from), basis[j].AsSpan(from, to - from));
                    sums[j, i] = sums[i, j];
                }
            }
        }
    }
}
