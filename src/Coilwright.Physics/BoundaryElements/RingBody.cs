namespace Coilwright.Physics.BoundaryElements;

/// <summary>A rod or screw standing along z: charge on rings, changing around the axis by a few waves.</summary>
internal sealed class RingBody : MagneticBody
{
    private readonly int _around;
    private SurfacePoint[]? _points;

    public RingBody(RingMesh mesh, Vector3M bottom, BodyMaterial material, double polarisationT, int around, Azimuth azimuth)
        : base(material, new Vector3M(0, 0, polarisationT))
    {
        (Mesh, X, Y, Bottom, _around, Azimuth) = (mesh, bottom.XM, bottom.YM, bottom.ZM, around, azimuth);
        Count = mesh.Count * azimuth.Waves.Length;
        (Area, Weight) = (new double[Count], new double[Count]);
        for (int i = 0; i < Count; i++)
        {
            (Area[i], Weight[i]) = i < Stride ? (mesh.Area[i], mesh.Area[i]) : (0, mesh.Area[i % Stride] / 2);
        }
    }

    public RingMesh Mesh { get; }
    public Azimuth Azimuth { get; }
    public double X { get; }
    public double Y { get; }
    public double Bottom { get; }

    /// <summary>Points around a ring where fields are averaged.</summary>
    public int Around => _around;
    public override int Count { get; }
    public override int Stride => Mesh.Count;
    public override double[] Area { get; }
    public override double[] Weight { get; }
    public override IReadOnlyList<SurfacePoint> Points => _points ??= MakePoints();

    public override double HeightM(int element) => element < Stride ? Bottom + Mesh.Z[element] : 0;

    public override double NormalPolarisationT(int element) => element < Stride ? Mesh.NormalZ[element] * PolarisationT.ZM : 0;

    public override int Mirror(int element) => element;

    public override int Tied(int element) => element < Stride || !Azimuth.Paired ? element : element - Mesh.InPair[element % Stride];

    public override int MirrorSign(int element) => Azimuth.MirrorSign(element / Stride);

    public override bool Mirrors(MagneticBody other, double x0) =>
        other is RingBody rod
        && ReferenceEquals(rod.Mesh, Mesh)
        && rod.Material == Material
        && rod.PolarisationT == PolarisationT
        && Math.Abs(rod.X + X - 2 * x0) < 1e-9
        && Math.Abs(rod.Y - Y) < 1e-9
        && Math.Abs(rod.Bottom - Bottom) < 1e-9;

    public override Vector3M Place => new(X, Y, Bottom);

    public override bool HasShapeOf(MagneticBody other) =>
        other is RingBody rod && ReferenceEquals(rod.Mesh, Mesh) && rod.Azimuth.Waves.AsSpan().SequenceEqual(Azimuth.Waves);

    public override void PatchFields(int patch, double x, double y, double z, Span<Vector3M> fields)
    {
        double ex = x - X,
            ey = y - Y,
            rho = Math.Sqrt(ex * ex + ey * ey);
        (double co, double si) = rho > 1e-9 ? (ex / rho, ey / rho) : (1, 0);
        int orders = Azimuth.Harmonics + 1;
        Span<double> radial = stackalloc double[orders],
            around = stackalloc double[orders],
            axial = stackalloc double[orders];
        Mesh.Fields(patch, Math.Max(rho, 1e-9), z - Bottom, radial, around, axial);
        double cos = 1,
            sin = 0;
        for (int m = 0, f = 0; m < orders; m++)
        {
            fields[f++] = InPlane(radial[m] * cos, around[m] * sin, co, si, axial[m] * cos);
            if (m > 0 && Azimuth.Sines)
            {
                fields[f++] = InPlane(radial[m] * sin, -around[m] * cos, co, si, axial[m] * sin);
            }

            (cos, sin) = (cos * co - sin * si, sin * co + cos * si);
        }
    }

    public override void NormalFields(in SurfacePoint point, Span<double> normal)
    {
        double ex = point.X - X,
            ey = point.Y - Y,
            rho = Math.Sqrt(ex * ex + ey * ey),
            co = rho > 1e-9 ? ex / rho : 1,
            si = rho > 1e-9 ? ey / rho : 0;
        int orders = Azimuth.Harmonics + 1,
            padded = Mesh.Bands.Padded;
        Span<double> radial = stackalloc double[orders * padded],
            around = stackalloc double[orders * padded],
            axial = stackalloc double[orders * padded];
        Mesh.Bands.Fields(Math.Max(rho, 1e-9), point.Z - Bottom, orders, radial, around, axial);
        double along = point.NormalX * co + point.NormalY * si,
            across = point.NormalY * co - point.NormalX * si;
        for (int f = 0; f < Waves; f++)
        {
            (int m, bool sine) = Azimuth.Waves[f];
            double angle = m == 0 ? 0 : m * Math.Atan2(si, co),
                even = sine ? Math.Sin(angle) : Math.Cos(angle),
                odd = sine ? -Math.Cos(angle) : Math.Sin(angle);
            for (int ring = 0; ring < Stride; ring++)
            {
                int at = m * padded + ring;
                normal[f * Stride + ring] = along * even * radial[at] + across * odd * around[at] + point.NormalZ * even * axial[at];
            }
        }
    }

    public override void Couple(CoilField coil, double[] share, double[] drive, double[] potential) =>
        RodCoupling.Couple(coil, this, drive, potential);

    private static Vector3M InPlane(double radial, double around, double co, double si, double axial) =>
        new(radial * co - around * si, radial * si + around * co, axial);

    private SurfacePoint[] MakePoints()
    {
        int around = Math.Max(4 + 2 * Azimuth.Harmonics, _around / 2);
        SurfacePoint[] points = new SurfacePoint[Stride * around];
        for (int s = 0; s < around; s++)
        {
            double angle = 2 * Math.PI * (s + 0.5) / around,
                co = Math.Cos(angle),
                si = Math.Sin(angle);
            double[] shares = Azimuth.Shares(angle, around);
            for (int i = 0; i < Stride; i++)
            {
                points[i * around + s] = new SurfacePoint(
                    i,
                    X + Mesh.Rho[i] * co,
                    Y + Mesh.Rho[i] * si,
                    Bottom + Mesh.Z[i],
                    Mesh.NormalRho[i] * co,
                    Mesh.NormalRho[i] * si,
                    Mesh.NormalZ[i],
                    shares
                );
            }
        }

        return points;
    }
}
