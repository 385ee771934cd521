using System.Numerics;

namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// What covers and plates do to the windings: their currents' circuit solved and folded into the inductance between the windings.
/// </summary>
internal sealed class SheetResponse
{
    private readonly SheetCut _cut;
    private readonly SheetModes _modes;
    private readonly double[][,] _along;

    private SheetResponse(SheetCut cut, SheetModes modes, SheetDrive drive, CoreSweep sweep)
    {
        (_cut, _modes, Sweep) = (cut, modes, sweep);
        _along = [.. cut.Meshes.Select((_, m) => Along(cut, drive, m))];
    }

    /// <summary>The cores with the sheets' currents as further sources.</summary>
    public CoreSweep Sweep { get; }

    /// <summary>Number of currents kept.</summary>
    public int Count => _modes.Count;

    /// <summary>Cuts and couples a problem's sheets; null when none conducts.</summary>
    public static SheetResponse? Solve(
        FieldProblem problem,
        FieldSettings settings,
        CoilField[] windings,
        SurfaceSystem system,
        CoreSweep sweep,
        double[][] charges,
        CancellationToken cancel
    )
    {
        if (problem.FrequenciesHz.Count == 0 || SheetCut.Create(problem, settings.SheetPanels) is not { } cut)
        {
            return null;
        }

        SheetDrive drive = new(cut, windings, system, charges, system.IsMirrored);
        SheetModes modes = new(cut, drive, settings, cancel);
        return new SheetResponse(cut, modes, drive, sweep.With(SheetCoupling.Couple(cut, modes, system, cancel)));
    }

    /// <summary>Inductance between the windings with the sheets' currents, and what each sheet's conductivity does to it.</summary>
    /// <param name="air">Without cores and sheets, per turns.</param>
    /// <param name="cores">The cores' share between windings and sheet currents.</param>
    /// <param name="frequencyHz">Frequency.</param>
    /// <param name="byConductivity">Filled with the change per relative change of conductivity, by place of the sheet in the
    /// problem.</param>
    public Complex[,] Inductance(double[,] air, Complex[,] cores, double frequencyHz, Dictionary<int, Complex[,]> byConductivity)
    {
        int windings = air.GetLength(0),
            q = _modes.Count;
        Complex jOmega = new(0, 2 * Math.PI * frequencyHz);
        Complex[,] matrix = new Complex[q, q],
            link = new Complex[q, windings];
        for (int i = 0; i < q; i++)
        {
            for (int j = 0; j < q; j++)
            {
                matrix[i, j] =
                    jOmega * (_modes.InductanceH[i, j] + Even(cores, windings + i, windings + j)) + _modes.ResistanceOhm.Sum(r => r[i, j]);
            }

            for (int w = 0; w < windings; w++)
            {
                link[i, w] = _modes.MutualH[i, w] + Even(cores, windings + i, w);
            }
        }

        Complex[,] currents = (Complex[,])link.Clone();
        ComplexLu.Solve(matrix, currents);
        Complex[,] total = new Complex[windings, windings];
        for (int k = 0; k < total.Length; k++)
        {
            (int a, int b) = (k / windings, k % windings);
            total[a, b] = air[a, b] + Even(cores, a, b) + Slabs(a, b, frequencyHz);
            for (int i = 0; i < q; i++)
            {
                total[a, b] -= jOmega * link[i, a] * currents[i, b];
            }
        }

        for (int m = 0; m < _cut.Meshes.Length; m++)
        {
            byConductivity[_cut.Meshes[m].Index] = ByConductivity(_modes.ResistanceOhm[m], currents, jOmega);
        }

        return total;
    }

    /// <summary>Eddy currents within the thickness, from the field along the sheet: closed form of a slab.</summary>
    private Complex Slabs(int a, int b, double frequencyHz)
    {
        Complex sum = 0;
        for (int m = 0; m < _along.Length; m++)
        {
            SheetModel sheet = _cut.Meshes[m].Sheet;
            Complex mu = SkinEffect.Permeability(1, sheet.ConductivitySPerM.Value, SkinShape.Slab, sheet.ThicknessM / 2, frequencyHz);
            sum += CoreSweep.Mu0 * (mu - 1) * _along[m][a, b];
        }

        return sum;
    }

    private static Complex[,] ByConductivity(double[,] resistance, Complex[,] currents, Complex jOmega)
    {
        int q = currents.GetLength(0),
            windings = currents.GetLength(1);
        Complex[,] change = new Complex[windings, windings];
        for (int k = 0; k < change.Length; k++)
        {
            for (int i = 0; i < q; i++)
            {
                for (int j = 0; j < q; j++)
                {
                    change[k / windings, k % windings] -= jOmega * currents[i, k / windings] * resistance[i, j] * currents[j, k % windings];
                }
            }
        }

        return change;
    }

    /// <summary>∫ h·h t dA of the windings' fields along one sheet.</summary>
    private static double[,] Along(SheetCut cut, SheetDrive drive, int mesh)
    {
        int windings = drive.Whole.Length,
            panels = cut.Panels.Length;
        double[,] along = new double[windings, windings];
        for (int at = 0; at < 4 * panels; at++)
        {
            SheetPanel panel = cut.Panels[at % panels];
            Vector3M normal = SheetCut.Image(panel.Normal, at / panels);
            double weight = cut.Owner[at % panels] == mesh ? panel.AreaM2 * panel.ThicknessM * (1 - panel.OpenShare) : 0;
            for (int k = 0; k < along.Length && weight > 0; k++)
            {
                Vector3M a = drive.Whole[k / windings][at],
                    b = drive.Whole[k % windings][at];
                along[k / windings, k % windings] += weight * (Space.Dot(a, b) - Space.Dot(a, normal) * Space.Dot(b, normal));
            }
        }

        return along;
    }

    private static Complex Even(Complex[,] matrix, int i, int j) => (matrix[i, j] + matrix[j, i]) / 2;
}
