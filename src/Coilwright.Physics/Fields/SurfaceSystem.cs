namespace Coilwright.Physics.Fields;

/// <summary>All permeable parts of a pickup as one set of unknown charges; elements that mirror each other in a plane x = const share one.</summary>
internal sealed class SurfaceSystem
{
    private readonly IReadOnlyList<MagneticBody> _bodies;
    private readonly int[][] _unknown;
    private readonly bool[][] _leads;
    private readonly int[] _group;

    /// <param name="bodies">The parts.</param>
    /// <param name="mirrorX">x of the plane in which windings and parts are mirror images of themselves; null when there is none.</param>
    public SurfaceSystem(IReadOnlyList<MagneticBody> bodies, double? mirrorX)
    {
        _bodies = bodies;
        (_unknown, _leads, _group) = (new int[bodies.Count][], new bool[bodies.Count][], new int[bodies.Count]);
        Number(mirrorX);
        (Weight, Height, Material) = (new double[Count], new double[Count], new int[Count]);
        Materials = [.. bodies.Select(body => body.Material).Distinct()];
        for (int b = 0; b < bodies.Count; b++)
        {
            for (int i = 0; i < bodies[b].Count; i++)
            {
                int u = _unknown[b][i];
                Weight[u] += bodies[b].Area[i];
                Height[u] = bodies[b].HeightM(i);
                Material[u] = Materials.IndexOf(bodies[b].Material);
            }
        }
    }

    public int Count { get; private set; }
    public List<BodyMaterial> Materials { get; }

    /// <summary>Index of each unknown's material.</summary>
    public int[] Material { get; }

    /// <summary>Area that an unknown stands for, m².</summary>
    public double[] Weight { get; }

    /// <summary>Height of each unknown's element, m.</summary>
    public double[] Height { get; }

    /// <summary>Normal field on each unknown's element per unit density of each unknown, row-major; every column conserves flux body by body.</summary>
    public double[] Kernel(CancellationToken cancel)
    {
        double[] kernel = new double[Count * Count];
        Dictionary<(RingMesh, RingMesh, long, long, int), double[,]> known = [];
        for (int t = 0; t < _bodies.Count; t++)
        {
            for (int s = 0; s < _bodies.Count && _leads[t].Contains(true); s++)
            {
                cancel.ThrowIfCancellationRequested();
                if (_bodies[t] is RingBody target && _bodies[s] is RingBody source)
                {
                    AddBlock(kernel, t, s, RingBlock(target, source, known));
                }
                else
                {
                    AddPoints(kernel, t, s);
                }
            }
        }

        ConserveFlux(kernel);
        return kernel;
    }

    /// <summary>A winding's mean normal field on each unknown's element and its potential there.</summary>
    public (double[] Drive, double[] Potential) Couple(CoilField coil)
    {
        double[] drive = new double[Count], potential = new double[Count];
        for (int b = 0; b < _bodies.Count; b++)
        {
            if (!_leads[b].Contains(true))
            {
                continue;
            }

            double[] ownDrive = new double[_bodies[b].Count], ownPotential = new double[_bodies[b].Count];
            _bodies[b].Couple(coil, 0, ownDrive, ownPotential);
            for (int i = 0; i < ownDrive.Length; i++)
            {
                (drive[_unknown[b][i]], potential[_unknown[b][i]]) = (ownDrive[i], ownPotential[i]);
            }
        }

        return (drive, potential);
    }

    /// <summary>What drives the magnets' own charges: normal source term over susceptibility, A/m, at real permeabilities, one per material.</summary>
    public double[] MagnetDrive(double[] permeability)
    {
        double[] drive = new double[Count];
        for (int b = 0; b < _bodies.Count; b++)
        {
            for (int i = 0; i < _bodies[b].Count; i++)
            {
                int u = _unknown[b][i];
                drive[u] = _bodies[b].NormalPolarisationT(i) / (CoreSweep.Mu0 * Math.Max(CoreSweep.LeastSusceptibility, permeability[Material[u]] - 1));
            }
        }

        return drive;
    }

    /// <summary>Field strength at a point outside the parts of several sets of charges; added to <paramref name="fields"/>, one per set.</summary>
    public void AddFieldAt(double x, double y, double z, double[][] charges, Span<Vector3M> fields)
    {
        for (int b = 0; b < _bodies.Count; b++)
        {
            MagneticBody body = _bodies[b];
            int[] unknown = _unknown[b];
            for (int i = 0; i < unknown.Length; i++)
            {
                Vector3M h = body.FieldOf(i, x, y, z);
                for (int set = 0; set < charges.Length; set++)
                {
                    double charge = charges[set][unknown[i]];
                    fields[set] = new Vector3M(fields[set].XM + charge * h.XM, fields[set].YM + charge * h.YM, fields[set].ZM + charge * h.ZM);
                }
            }
        }
    }

    /// <summary>Numbers the unknowns; the first element of a mirror pair leads.</summary>
    private void Number(double? mirrorX)
    {
        for (int b = 0; b < _bodies.Count; b++)
        {
            int count = _bodies[b].Count, twin = mirrorX is { } x0 ? Enumerable.Range(0, b + 1).First(o => o == b || _bodies[b].Mirrors(_bodies[o], x0)) : b;
            (_unknown[b], _leads[b], _group[b]) = (new int[count], new bool[count], twin);
            bool folded = twin == b && mirrorX is { } x1 && _bodies[b].Mirrors(_bodies[b], x1);
            for (int i = 0; i < count; i++)
            {
                int image = folded ? _bodies[b].Mirror(i) : i;
                _leads[b][i] = twin == b && image >= i;
                _unknown[b][i] = twin != b ? _unknown[twin][i] : image < i ? _unknown[b][image] : Count++;
            }
        }
    }

    private static double[,] RingBlock(RingBody target, RingBody source, Dictionary<(RingMesh, RingMesh, long, long, int), double[,]> known)
    {
        if (ReferenceEquals(target, source))
        {
            return target.Mesh.Self;
        }

        double dx = target.X - source.X, dy = target.Y - source.Y, dz = target.Bottom - source.Bottom;
        var key = (target.Mesh, source.Mesh, (long)Math.Round((dx * dx + dy * dy) * 1e15), (long)Math.Round(dz * 1e10), 0);
        if (!known.TryGetValue(key, out double[,]? block))
        {
            known[key] = block = source.FieldOn(target);
        }

        return block;
    }

    private void AddBlock(double[] kernel, int t, int s, double[,] block)
    {
        for (int i = 0; i < _unknown[t].Length; i++)
        {
            int row = _unknown[t][i] * Count;
            for (int j = 0; _leads[t][i] && j < _unknown[s].Length; j++)
            {
                kernel[row + _unknown[s][j]] += block[i, j];
            }
        }
    }

    private void AddPoints(double[] kernel, int t, int s)
    {
        MagneticBody source = _bodies[s];
        foreach (SurfacePoint point in _bodies[t].Points)
        {
            int row = _unknown[t][point.Element] * Count;
            for (int j = 0; _leads[t][point.Element] && j < source.Count; j++)
            {
                if (t == s && point.Element == j)
                {
                    continue; // a flat element's own normal field is zero; its diagonal follows from the flux
                }

                Vector3M h = source.FieldOf(j, point.X, point.Y, point.Z);
                kernel[row + _unknown[s][j]] += point.Share * (point.NormalX * h.XM + point.NormalY * h.YM + point.NormalZ * h.ZM);
            }
        }
    }

    /// <summary>Half of a charge's flux leaves its own body, none enters another: diagonals and means set right, or the net charge runs away as µ grows.</summary>
    private void ConserveFlux(double[] kernel)
    {
        int[] group = new int[Count];
        double[] area = new double[_bodies.Count];
        for (int b = 0; b < _bodies.Count; b++)
        {
            for (int i = 0; i < _unknown[b].Length; i++)
            {
                group[_unknown[b][i]] = _group[b];
                area[_group[b]] += _bodies[b].Area[i];
            }
        }

        double[] flux = new double[_bodies.Count];
        for (int j = 0; j < Count; j++)
        {
            Array.Clear(flux);
            for (int i = 0; i < Count; i++)
            {
                flux[group[i]] += Weight[i] * kernel[i * Count + j];
            }

            for (int i = 0; i < Count; i++)
            {
                kernel[i * Count + j] -= group[i] != group[j] ? flux[group[i]] / area[group[i]]
                    : i == j ? flux[group[i]] / Weight[j] - 0.5 : 0;
            }
        }
    }
}
