namespace Coilwright.Physics.BoundaryElements;

/// <summary>Surface of a rod or screw, cut into rings; heights from the bottom of the part, m. Shared by all equal parts.</summary>
/// <remarks>
/// Rings lie denser toward edges, where the charge grows without bound; each ring is a straight band from (FromRho, FromZ) to (ToRho, ToZ).
/// </remarks>
internal sealed class RingMesh
{
    private readonly List<(double Rho, double Z)> _from = [],
        _to = [];
    private readonly List<double[,]> _selves = [];
    private double[,]? _self;
    private RingBands? _bands;

    private RingMesh(Action<RingMesh> build)
    {
        build(this);
        Count = _from.Count;
        InPair = new int[Count];
        (Rho, Z, NormalRho, NormalZ, Area) = (
            new double[Count],
            new double[Count],
            new double[Count],
            new double[Count],
            new double[Count]
        );
        for (int i = 0; i < Count; i++)
        {
            (double fromRho, double fromZ) = _from[i];
            (double toRho, double toZ) = _to[i];
            double width = Math.Sqrt((toRho - fromRho) * (toRho - fromRho) + (toZ - fromZ) * (toZ - fromZ));
            (Rho[i], Z[i]) = ((fromRho + toRho) / 2, (fromZ + toZ) / 2);
            // Walking up the outline with the body on the left, outward is to the right.
            (NormalRho[i], NormalZ[i]) = ((toZ - fromZ) / width, -(toRho - fromRho) / width);
            Area[i] = 2 * Math.PI * Rho[i] * width;
            bool sameFace = i > 0 && Math.Abs(NormalRho[i] - NormalRho[i - 1]) + Math.Abs(NormalZ[i] - NormalZ[i - 1]) < 1e-9;
            InPair[i] = sameFace && InPair[i - 1] == 0 ? 1 : 0;
        }
    }

    public int Count { get; }

    /// <summary>1 for a ring that is the second of two neighbours on one face, 0 for the first or one left over.</summary>
    public int[] InPair { get; }
    public double[] Rho { get; }
    public double[] Z { get; }
    public double[] NormalRho { get; }
    public double[] NormalZ { get; }
    public double[] Area { get; }

    /// <summary>Normal field at each ring per unit charge density on each ring of the same body; columns conserve flux exactly.</summary>
    public double[,] Self => _self ??= MakeSelf();

    /// <summary>A plain rod.</summary>
    public static RingMesh Rod(double radius, double length, int side, int cap) =>
        new(mesh =>
        {
            mesh.Add((0, 0), (radius, 0), cap, startEdge: false, endEdge: true);
            mesh.Add((radius, 0), (radius, length), side, startEdge: true, endEdge: true);
            mesh.Add((radius, length), (0, length), cap, startEdge: true, endEdge: false);
        });

    /// <summary>A screw: shaft with a wider or narrower cylindrical head on top; the length includes the head.</summary>
    public static RingMesh Screw(double radius, double length, double headRadius, double headHeight, int side, int cap) =>
        new(mesh =>
        {
            double shoulder = length - headHeight;
            mesh.Add((0, 0), (radius, 0), cap, startEdge: false, endEdge: true);
            mesh.Add((radius, 0), (radius, shoulder), side, startEdge: true, endEdge: false);
            mesh.Add((radius, shoulder), (headRadius, shoulder), Math.Max(1, cap - 1), startEdge: false, endEdge: true);
            mesh.Add((headRadius, shoulder), (headRadius, length), cap, startEdge: true, endEdge: true);
            mesh.Add((headRadius, length), (0, length), cap + 1, startEdge: true, endEdge: false);
        });

    /// <summary>A point of a band and its share: the place of a filament ring that stands for part of it.</summary>
    public (double Rho, double Z, double Charge) Filament(int band, GaussRule rule, int node)
    {
        double t = rule.At[node];
        double rho = _from[band].Rho + t * (_to[band].Rho - _from[band].Rho),
            z = _from[band].Z + t * (_to[band].Z - _from[band].Z);
        return (rho, z, Area[band] * rule.Weight[node] * rho / Rho[band]);
    }

    /// <summary>Width of a band, m.</summary>
    public double Width(int band) => Area[band] / (2 * Math.PI * Rho[band]);

    /// <summary>Rule for the field of a band at a distance: more filaments the nearer the point.</summary>
    public GaussRule RuleFor(int band, double distance)
    {
        int filaments = (distance / Width(band)) switch
        {
            > 6 => 1,
            > 2.5 => 2,
            > 1.2 => 4,
            _ => 6,
        };
        return GaussRule.WithNodes(filaments);
    }

    private void Add((double Rho, double Z) from, (double Rho, double Z) to, int parts, bool startEdge, bool endEdge)
    {
        (double Rho, double Z) At(double t) => (from.Rho + t * (to.Rho - from.Rho), from.Z + t * (to.Z - from.Z));
        double Place(double s) =>
            (startEdge, endEdge) switch
            {
                (true, true) => (1 - Math.Cos(Math.PI * s)) / 2,
                (true, false) => 1 - Math.Cos(Math.PI / 2 * s),
                (false, true) => Math.Sin(Math.PI / 2 * s),
                _ => s,
            };
        for (int i = 0; i < parts; i++)
        {
            _from.Add(At(Place(i / (double)parts)));
            _to.Add(At(Place((i + 1) / (double)parts)));
        }
    }

    /// <summary>The same for charges that go around as cos mφ or sin mφ: the even part and the regular rest.</summary>
    public double[,] SelfOf(int order)
    {
        if (order == 0)
        {
            return Self;
        }

        lock (_selves)
        {
            while (_selves.Count < order)
            {
                _selves.Add(MakeSelf(_selves.Count + 1));
            }

            return _selves[order - 1];
        }
    }

    /// <summary>All rings at once.</summary>
    public RingBands Bands => _bands ??= new RingBands(this);

    /// <summary>
    /// Field at a point of a band per unit density, by order of the wave around it: radial and axial as cos mφ, around as sin mφ.
    /// </summary>
    public void Fields(int band, double rho, double z, Span<double> radial, Span<double> around, Span<double> axial)
    {
        double dr = rho - Rho[band],
            dz = z - Z[band];
        GaussRule rule = RuleFor(band, Math.Sqrt(dr * dr + dz * dz));
        radial.Clear();
        around.Clear();
        axial.Clear();
        Span<double> r = stackalloc double[radial.Length],
            a = stackalloc double[radial.Length],
            h = stackalloc double[radial.Length];
        for (int node = 0; node < rule.At.Length; node++)
        {
            (double ring, double height, double charge) = Filament(band, rule, node);
            if (radial.Length == 1)
            {
                (r[0], h[0]) = RingKernel.Field(ring, rho, z - height);
            }
            else
            {
                HarmonicRingKernel.Fields(ring, rho, z - height, r, a, h);
            }

            for (int m = 0; m < radial.Length; m++)
            {
                radial[m] += charge * r[m];
                around[m] += charge * a[m];
                axial[m] += charge * h[m];
            }
        }
    }

    private double[,] MakeSelf(int order)
    {
        double[,] block = (double[,])Self.Clone();
        Span<double> r = stackalloc double[order + 1],
            a = stackalloc double[order + 1],
            h = stackalloc double[order + 1];
        for (int i = 0; i < Count; i++)
        {
            for (int j = 0; j < Count; j++)
            {
                double dr = Rho[i] - Rho[j],
                    dz = Z[i] - Z[j];
                GaussRule rule = RuleFor(j, Math.Sqrt(dr * dr + dz * dz));
                for (int node = 0; node < rule.At.Length; node++)
                {
                    (double ring, double height, double charge) = Filament(j, rule, node);
                    HarmonicRingKernel.Fields(ring, Rho[i], Z[i] - height, r, a, h);
                    block[i, j] += charge * (NormalRho[i] * (r[order] - r[0]) + NormalZ[i] * (h[order] - h[0]));
                }
            }
        }

        return block;
    }

    private double[,] MakeSelf()
    {
        double[,] block = new double[Count, Count];
        for (int j = 0; j < Count; j++)
        {
            double flux = 0;
            for (int i = 0; i < Count; i++)
            {
                if (i != j)
                {
                    block[i, j] = NormalField(i, j);
                    flux += Area[i] * block[i, j];
                }
            }

            block[j, j] = 0.5 - flux / Area[j];
        }

        return block;
    }

    private double NormalField(int i, int j)
    {
        double dr = Rho[i] - Rho[j],
            dz = Z[i] - Z[j],
            sum = 0;
        GaussRule rule = RuleFor(j, Math.Sqrt(dr * dr + dz * dz));
        for (int node = 0; node < rule.At.Length; node++)
        {
            (double rho, double z, double charge) = Filament(j, rule, node);
            (double radial, double axial) = RingKernel.Field(rho, Rho[i], Z[i] - z);
            sum += charge * (NormalRho[i] * radial + NormalZ[i] * axial);
        }

        return sum;
    }
}
