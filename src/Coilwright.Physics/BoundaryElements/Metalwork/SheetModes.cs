namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// A few currents in covers and plates that carry what the windings induce at any audio frequency, and the small matrices between them.
/// </summary>
/// <remarks>
/// For each winding and mirror class: (R + s₀L)⁻¹ of its flux, then of L times that, and so on, made orthonormal. One real factorisation
/// serves every frequency.
/// </remarks>
internal sealed class SheetModes
{
    private const double Mu0 = 4e-7 * Math.PI;

    /// <summary>A class that gets less than this share of the flux is left out.</summary>
    private const double LeastShare = 1e-9;

    private readonly List<SheetMode> _modes = [];

    /// <param name="cut">The panels.</param>
    /// <param name="drive">The windings' fields there.</param>
    /// <param name="settings">How many currents to keep.</param>
    /// <param name="cancel">Stops the work.</param>
    public SheetModes(SheetCut cut, SheetDrive drive, FieldSettings settings, CancellationToken cancel)
    {
        Windings = drive.Whole.Length;
        double[][,] fluxes = [.. Enumerable.Range(0, 4).Select(parity => Fluxes(cut, drive.Whole, parity))];
        double whole = fluxes.Sum(Square);
        List<(SheetParity Parity, double[][] Basis)> made = [];
        for (int parity = 0; parity < 4; parity++)
        {
            cancel.ThrowIfCancellationRequested();
            if (Square(fluxes[parity]) > LeastShare * LeastShare * whole)
            {
                SheetParity system = cut.Parity(parity);
                made.Add((system, Basis(system, OnNodes(cut, system, fluxes[parity]), settings)));
            }
        }

        int count = made.Sum(part => part.Basis.Length),
            first = 0;
        (InductanceH, MutualH) = (new double[count, count], new double[count, Windings]);
        ResistanceOhm = [.. cut.Meshes.Select(_ => new double[count, count])];
        foreach ((SheetParity system, double[][] basis) in made)
        {
            Project(cut, system, basis, first);
            double[][] alone = OnNodes(cut, system, Fluxes(cut, drive.Alone, (system.SignX < 0 ? 1 : 0) + (system.SignY < 0 ? 2 : 0)));
            for (int k = 0; k < basis.Length; k++, first++)
            {
                _modes.Add(new SheetMode(cut, system, basis[k]));
                for (int w = 0; w < Windings; w++)
                {
                    MutualH[first, w] = Rows.Dot(basis[k], alone[w]);
                }
            }
        }
    }

    public int Windings { get; }
    public int Count => _modes.Count;
    public IReadOnlyList<SheetMode> Modes => _modes;

    /// <summary>Between the currents, without cores.</summary>
    public double[,] InductanceH { get; }

    /// <summary>Of each current with each winding per turn, without cores.</summary>
    public double[,] MutualH { get; }

    /// <summary>Between the currents, one matrix per cut sheet.</summary>
    public double[][,] ResistanceOhm { get; }

    /// <summary>Flux of each winding through each panel in one mirror class, Wb per ampere-turn.</summary>
    private static double[,] Fluxes(SheetCut cut, Vector3M[][] field, int parity)
    {
        int panels = cut.Panels.Length;
        double[,] fluxes = new double[field.Length, panels];
        for (int w = 0; w < field.Length; w++)
        {
            for (int at = 0; at < 4 * panels; at++)
            {
                int image = at / panels,
                    sign = (image & parity) is 1 or 2 ? -1 : 1;
                fluxes[w, at % panels] += sign * Mu0 * Space.Dot(field[w][at], SheetCut.Image(cut.Panels[at % panels].AreaVector, image));
            }
        }

        return fluxes;
    }

    private static double Square(double[,] matrix) => matrix.Cast<double>().Sum(value => value * value);

    private static double[][] OnNodes(SheetCut cut, SheetParity system, double[,] fluxes)
    {
        double[][] nodes = new double[fluxes.GetLength(0)][];
        for (int w = 0; w < nodes.Length; w++)
        {
            nodes[w] = new double[system.Count];
            for (int k = 0; k < 4 * cut.Panels.Length; k++)
            {
                if (system.Unknown(k / 4, k % 4) is >= 0 and int node)
                {
                    nodes[w][node] += fluxes[w, k / 4] / 4;
                }
            }
        }

        return nodes;
    }

    private static double[][] Basis(SheetParity system, double[][] flux, FieldSettings settings)
    {
        List<double[]> basis = [];
        double[][] next = [.. flux.Select(vector => (double[])vector.Clone())];
        for (int step = 0; step < settings.SheetCurrents; step++)
        {
            for (int w = 0; w < next.Length && next[w].Length > 0; w++)
            {
                system.Factors.Solve(next[w]);
                int before = basis.Count;
                Orthonormal.Add(next[w], basis, settings.SheetTolerance);
                next[w] = basis.Count > before ? Times(system.InductanceH, basis[^1], system.Count) : [];
            }
        }

        return [.. basis];
    }

    private void Project(SheetCut cut, SheetParity system, double[][] basis, int first)
    {
        for (int j = 0; j < basis.Length; j++)
        {
            double[] image = Times(system.InductanceH, basis[j], system.Count),
                loss = Times(system.ResistanceOhm, basis[j], system.Count);
            for (int i = 0; i < basis.Length; i++)
            {
                InductanceH[first + i, first + j] = Rows.Dot(basis[i], image);
                for (int node = 0; node < system.Count; node++)
                {
                    ResistanceOhm[system.Owner[node]][first + i, first + j] += basis[i][node] * loss[node];
                }
            }
        }
    }

    private static double[] Times(double[] matrix, double[] vector, int n)
    {
        double[] product = new double[n];
        for (int i = 0; i < n; i++)
        {
            product[i] = Rows.Dot(matrix.AsSpan(i * n, n), vector);
        }

        return product;
    }
}
