namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// An end of a rod that stands flat on a face of a bar: charges that lie on one another act by the jump of the normal field alone.
/// </summary>
/// <remarks>
/// Just beyond an evenly charged sheet the normal field is half its density, and within its plane none. So an end ring drives the panels
/// that it
/// covers by −½ of the share of the panel that it covers, and a panel the ring by −½ of the ring's part that lies on it: the limit of a
/// vanishing gap,
/// which points beside coarse panels cannot reach.
/// </remarks>
internal sealed class FootContact
{
    /// <summary>A gap this small counts as none, m.</summary>
    public const double TouchM = 5e-5;

    private const int Radii = 3,
        Angles = 48;

    private readonly List<(int Ring, int Panel, double[] Shares)> _overlaps = [];
    private readonly HashSet<(int Ring, int Panel)> _covered = [];

    private FootContact() { }

    /// <summary>The contact of a rod with a bar; null when they do not touch.</summary>
    public static FootContact? Find(RingBody rod, PanelBody bar)
    {
        FootContact contact = new();
        for (int ring = 0; ring < rod.Stride; ring++)
        {
            double up = rod.Mesh.NormalZ[ring];
            if (Math.Abs(up) > 0.5 && bar.FaceAt(rod.Bottom + rod.Mesh.Z[ring], -Math.Sign(up), TouchM) is { Count: > 0 } face)
            {
                contact.Add(rod, bar, ring, face);
            }
        }

        return contact._overlaps.Count == 0 ? null : contact;
    }

    /// <summary>True for a ring and a panel in the plane of contact, which act by <see cref="Overlaps"/> and not by distance.</summary>
    public bool Covers(int ring, int panel) => _covered.Contains((ring, panel));

    /// <summary>Ring, panel, and the share of each wave's coefficient on the ring that lies on the panel.</summary>
    public IReadOnlyList<(int Ring, int Panel, double[] Shares)> Overlaps => _overlaps;

    private void Add(RingBody rod, PanelBody bar, int ring, IReadOnlyList<int> face)
    {
        Dictionary<int, double[]> found = [];
        double half = rod.Mesh.Width(ring) / 2,
            area = 0;
        for (int k = 0; k < Radii * Angles; k++)
        {
            double rho = rod.Mesh.Rho[ring] + half * (2 * (k / Angles + 0.5) / Radii - 1),
                angle = 2 * Math.PI * (k % Angles + 0.5) / Angles;
            area += rho;
            foreach (int panel in face)
            {
                if (bar.Holds(panel, rod.X + rho * Math.Cos(angle), rod.Y + rho * Math.Sin(angle)))
                {
                    double[] shares = found.TryGetValue(panel, out double[]? known) ? known : found[panel] = new double[rod.Waves];
                    double[] own = rod.Azimuth.Shares(angle, 1);
                    for (int f = 0; f < shares.Length; f++)
                    {
                        shares[f] += rho * own[f];
                    }

                    break;
                }
            }
        }

        if (found.Count > 0)
        {
            _covered.UnionWith(face.Select(panel => (ring, panel)));
        }

        _overlaps.AddRange(found.Select(pair => (ring, pair.Key, pair.Value.Select(sum => sum / area).ToArray())));
    }
}
