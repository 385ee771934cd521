namespace Coilwright.Physics.Fields;

/// <summary>A rod or screw standing along z: charge even around each ring.</summary>
internal sealed class RingBody : MagneticBody
{
    private readonly int _around;
    private SurfacePoint[]? _points;

    public RingBody(RingMesh mesh, double x, double y, double bottom, BodyMaterial material, double polarisationT, int around)
        : base(material, new Vector3M(0, 0, polarisationT))
    {
        (Mesh, X, Y, Bottom, _around) = (mesh, x, y, bottom, around);
    }

    public RingMesh Mesh { get; }
    public double X { get; }
    public double Y { get; }
    public double Bottom { get; }
    public override int Count => Mesh.Count;
    public override double[] Area => Mesh.Area;
    public override IReadOnlyList<SurfacePoint> Points => _points ??= MakePoints();

    public override double HeightM(int element) => Bottom + Mesh.Z[element];

    public override double NormalPolarisationT(int element) => Mesh.NormalZ[element] * PolarisationT.ZM;

    public override int Mirror(int element) => element;

    public override bool Mirrors(MagneticBody other, double x0) =>
        other is RingBody rod && ReferenceEquals(rod.Mesh, Mesh) && rod.Material == Material && rod.PolarisationT == PolarisationT
        && Math.Abs(rod.X + X - 2 * x0) < 1e-9 && Math.Abs(rod.Y - Y) < 1e-9 && Math.Abs(rod.Bottom - Bottom) < 1e-9;

    public override Vector3M FieldOf(int element, double x, double y, double z)
    {
        double ex = x - X, ey = y - Y, rho = Math.Max(1e-9, Math.Sqrt(ex * ex + ey * ey)), hr = 0, hz = 0;
        double dr = rho - Mesh.Rho[element], dz = z - HeightM(element);
        GaussRule rule = Mesh.RuleFor(element, Math.Sqrt(dr * dr + dz * dz));
        for (int node = 0; node < rule.At.Length; node++)
        {
            (double ring, double height, double charge) = Mesh.Filament(element, rule, node);
            (double radial, double axial) = RingKernel.Field(ring, rho, z - Bottom - height);
            hr += charge * radial;
            hz += charge * axial;
        }

        return new Vector3M(hr * ex / rho, hr * ey / rho, hz);
    }

    /// <summary>Normal field on every ring of a target per unit density on every ring here; depends on nothing but the two meshes and their shift.</summary>
    public double[,] FieldOn(RingBody target)
    {
        double apart = Math.Sqrt((target.X - X) * (target.X - X) + (target.Y - Y) * (target.Y - Y)), lift = target.Bottom - Bottom;
        double[,] block = new double[target.Count, Count];
        RingMesh theirs = target.Mesh;
        double reach = apart - theirs.Rho[theirs.Count / 2] - Mesh.Rho[Count / 2];
        int samples = apart < 1e-9 ? 1 : reach < 4 * Mesh.Rho[Count / 2] ? _around / 2 : Math.Max(2, _around / 4);
        for (int i = 0; i < target.Count; i++)
        {
            for (int s = 0; s < samples; s++)
            {
                double angle = Math.PI * (s + 0.5) / samples, co = Math.Cos(angle), si = Math.Sin(angle);
                double px = apart + theirs.Rho[i] * co, py = theirs.Rho[i] * si, rho = Math.Max(1e-9, Math.Sqrt(px * px + py * py));
                double turn = theirs.NormalRho[i] * (px * co + py * si) / (rho * samples), up = theirs.NormalZ[i] / samples;
                AddRow(block, i, rho, lift + theirs.Z[i], turn, up);
            }
        }

        RemoveMeans(block, theirs.Area);
        return block;
    }

    public override void Couple(CoilField coil, int place, double[] drive, double[] potential) =>
        RodCoupling.Couple(coil, this, _around, place, drive, potential);

    private void AddRow(double[,] block, int i, double rho, double z, double turn, double up)
    {
        for (int j = 0; j < Count; j++)
        {
            double dr = rho - Mesh.Rho[j], dz = z - Mesh.Z[j];
            GaussRule rule = Mesh.RuleFor(j, Math.Sqrt(dr * dr + dz * dz));
            for (int node = 0; node < rule.At.Length; node++)
            {
                (double ring, double height, double charge) = Mesh.Filament(j, rule, node);
                (double radial, double axial) = RingKernel.Field(ring, rho, z - height);
                block[i, j] += charge * (turn * radial + up * axial);
            }
        }
    }

    /// <summary>No net flux of a charge outside enters a closed surface.</summary>
    private static void RemoveMeans(double[,] block, double[] area)
    {
        double total = area.Sum();
        for (int j = 0; j < block.GetLength(1); j++)
        {
            double flux = 0;
            for (int i = 0; i < area.Length; i++)
            {
                flux += area[i] * block[i, j];
            }

            for (int i = 0; i < area.Length; i++)
            {
                block[i, j] -= flux / total;
            }
        }
    }

    private SurfacePoint[] MakePoints()
    {
        int around = Math.Max(4, _around / 2);
        SurfacePoint[] points = new SurfacePoint[Count * around];
        for (int k = 0; k < points.Length; k++)
        {
            int i = k / around;
            double angle = 2 * Math.PI * (k % around + 0.5) / around, co = Math.Cos(angle), si = Math.Sin(angle);
            points[k] = new SurfacePoint(i, X + Mesh.Rho[i] * co, Y + Mesh.Rho[i] * si, HeightM(i),
                Mesh.NormalRho[i] * co, Mesh.NormalRho[i] * si, Mesh.NormalZ[i], 1.0 / around);
        }

        return points;
    }
}
