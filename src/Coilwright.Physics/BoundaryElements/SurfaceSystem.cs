namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// All permeable parts of a pickup as one set of unknown charges; elements that mirror each other in a plane x = const share one.
/// </summary>
internal sealed class SurfaceSystem
{
    private readonly IReadOnlyList<MagneticBody> _bodies;
    private readonly SystemPlaces _places;

    /// <param name="bodies">The parts.</param>
    /// <param name="mirrorX">x of the plane in which windings and parts are mirror images of themselves; null when there is none.</param>
    public SurfaceSystem(IReadOnlyList<MagneticBody> bodies, double? mirrorX)
    {
        (_bodies, _places, IsMirrored) = (bodies, new SystemPlaces(bodies, mirrorX), mirrorX is not null);
        (Weight, Moment, Material) = (new double[Count], new double[Count], new int[Count]);
        Materials = [.. bodies.Select(body => body.Material).Distinct()];
        for (int b = 0; b < bodies.Count; b++)
        {
            for (int i = 0; i < bodies[b].Count; i++)
            {
                int u = _places.Unknown[b][i];
                if (u >= 0)
                {
                    Weight[u] += bodies[b].Weight[i];
                    Moment[u] += bodies[b].Area[i] * bodies[b].HeightM(i);
                    Material[u] = Materials.IndexOf(bodies[b].Material);
                }
            }
        }
    }

    public int Count => _places.Count;
    public List<BodyMaterial> Materials { get; }

    /// <summary>Index of each unknown's material.</summary>
    public int[] Material { get; }

    /// <summary>Area that an unknown stands for, m².</summary>
    public double[] Weight { get; }

    /// <summary>Moment along z of each unknown per unit density, m³.</summary>
    public double[] Moment { get; }

    /// <summary>True when windings and parts are mirror images of themselves in a plane x = const.</summary>
    public bool IsMirrored { get; }

    /// <summary>Every part with the unknown of each of its elements (−1: none) and the sign with which it follows it.</summary>
    public IEnumerable<(MagneticBody Body, int[] Unknown, int[] Sign)> Elements =>
        _bodies.Select((body, b) => (body, _places.Unknown[b], _places.Sign[b]));

    /// <summary>
    /// The parts that stand for themselves and their mirror images, with the unknown of each element and its share of that unknown's
    /// equation.
    /// </summary>
    public IEnumerable<(MagneticBody Body, int[] Unknown, double[] Share)> LeadingElements =>
        Enumerable.Range(0, _bodies.Count).Where(_places.IsLed).Select(b => (_bodies[b], _places.Unknown[b], _places.Share[b]));

    /// <summary>
    /// Normal field on each unknown's element per unit density of each unknown, row-major; every column conserves flux body by body.
    /// </summary>
    public double[] Kernel(CancellationToken cancel) =>
        new SystemKernel(_bodies, _places, Weight).Make(known: null, keep: false, cancel).Kernel;

    /// <summary>The same, with its blocks for neighbours that share them.</summary>
    /// <param name="known">Blocks of a neighbour; null for none.</param>
    /// <param name="cancel">Stops it.</param>
    public (double[] Kernel, KernelBlocks Blocks) Kernel(KernelBlocks? known, CancellationToken cancel) =>
        new SystemKernel(_bodies, _places, Weight).Make(known, keep: true, cancel);

    /// <summary>Coefficients of a winding's normal field and potential for each unknown.</summary>
    public (double[] Drive, double[] Potential) Couple(CoilField coil)
    {
        double[] drive = new double[Count],
            potential = new double[Count];
        foreach ((MagneticBody body, int[] unknown, double[] share) in LeadingElements)
        {
            double[] ownDrive = new double[body.Count],
                ownPotential = new double[body.Count];
            body.Couple(coil, share, ownDrive, ownPotential);
            for (int i = 0; i < ownDrive.Length; i++)
            {
                if (share[i] > 0)
                {
                    drive[unknown[i]] += share[i] * ownDrive[i];
                    potential[unknown[i]] += share[i] * ownPotential[i];
                }
            }
        }

        return (drive, potential);
    }

    /// <summary>
    /// What drives the magnets' own charges: normal source term over susceptibility, A/m, at real permeabilities, one per material.
    /// </summary>
    public double[] MagnetDrive(double[] permeability)
    {
        double[] drive = new double[Count];
        foreach ((MagneticBody body, int[] unknown, double[] share) in LeadingElements)
        {
            for (int i = 0; i < body.Count; i++)
            {
                if (share[i] > 0)
                {
                    int u = unknown[i];
                    drive[u] +=
                        share[i]
                        * body.NormalPolarisationT(i)
                        / (CoreSweep.Mu0 * Math.Max(CoreSweep.LeastSusceptibility, permeability[Material[u]] - 1));
                }
            }
        }

        return drive;
    }

    /// <summary>
    /// Per unknown and unit density: integral of the potentials x·z, y·z and (z² − x²/2 − y²/2)/2 over its elements, m⁴: what a field that
    /// changes evenly along x, y or z does to it.
    /// </summary>
    public double[][] GradientPotentials()
    {
        double[][] sums = [new double[Count], new double[Count], new double[Count]];
        foreach ((MagneticBody body, int[] unknown, int[] sign) in Elements)
        {
            foreach (SurfacePoint at in body.Spread)
            {
                for (int f = 0, element = at.Element; f < at.Shares.Length; f++, element += body.Stride)
                {
                    if (unknown[element] >= 0)
                    {
                        double share = sign[element] * body.Weight[element] * at.Shares[f];
                        sums[0][unknown[element]] += share * at.X * at.Z;
                        sums[1][unknown[element]] += share * at.Y * at.Z;
                        sums[2][unknown[element]] += share * (at.Z * at.Z - (at.X * at.X + at.Y * at.Y) / 2) / 2;
                    }
                }
            }
        }

        return sums;
    }

    /// <summary>
    /// Field strength at a point outside the parts of several sets of charges; added to <paramref name="fields"/>, one per set.
    /// </summary>
    public void AddFieldAt(double x, double y, double z, double[][] charges, Span<Vector3M> fields)
    {
        Span<Vector3M> patch = stackalloc Vector3M[8];
        for (int b = 0; b < _bodies.Count; b++)
        {
            MagneticBody body = _bodies[b];
            (int[] unknown, int[] sign) = (_places.Unknown[b], _places.Sign[b]);
            for (int i = 0; i < body.Stride; i++)
            {
                body.PatchFields(i, x, y, z, patch);
                for (int f = 0, element = i; element < body.Count; f++, element += body.Stride)
                {
                    for (int set = 0; set < charges.Length && unknown[element] >= 0; set++)
                    {
                        double charge = sign[element] * charges[set][unknown[element]];
                        fields[set] = new Vector3M(
                            fields[set].XM + charge * patch[f].XM,
                            fields[set].YM + charge * patch[f].YM,
                            fields[set].ZM + charge * patch[f].ZM
                        );
                    }
                }
            }
        }
    }
}
