namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// Charges on permeable parts seen from outside: elements close by by their own shape, those farther off as points around them.
/// </summary>
internal sealed class ChargeCloud
{
    /// <summary>Elements nearer than this many sizes act by their shape.</summary>
    private const double NearSizes = 2;

    private readonly List<Element> _elements = [];
    private readonly double[] _x,
        _y,
        _z,
        _charge;
    private readonly int _sets;

    public ChargeCloud(SurfaceSystem system, double[][] charges)
    {
        _sets = charges.Length;
        List<double> x = [],
            y = [],
            z = [],
            charge = [];
        foreach ((MagneticBody body, int[] unknown, int[] sign) in system.Elements)
        {
            foreach (IGrouping<int, SurfacePoint> points in body.Points.GroupBy(point => point.Element))
            {
                int first = x.Count,
                    waves = body.Waves;
                int[] elements = [.. Enumerable.Range(0, waves).Select(f => points.Key + f * body.Stride)];
                double[] density = [.. charges.SelectMany(set => elements.Select(i => unknown[i] < 0 ? 0 : sign[i] * set[unknown[i]]))];
                foreach (SurfacePoint point in points)
                {
                    x.Add(point.X);
                    y.Add(point.Y);
                    z.Add(point.Z);
                    charge.AddRange(
                        charges.Select(
                            (_, set) =>
                                elements.Select((i, f) => density[set * waves + f] * body.Weight[i] * point.Shares[f]).Sum() / (4 * Math.PI)
                        )
                    );
                }

                double near = NearSizes * Math.Sqrt(body.Area[points.Key] / points.Count());
                _elements.Add(new Element(body, points.Key, first, x.Count, near * near, density));
            }
        }

        (_x, _y, _z, _charge) = ([.. x], [.. y], [.. z], [.. charge]);
    }

    public void AddFieldAt(Vector3M at, Span<Vector3M> fields)
    {
        Span<Vector3M> patch = stackalloc Vector3M[8],
            far = stackalloc Vector3M[_sets];
        foreach (Element element in _elements)
        {
            far.Clear();
            if (AddPoints(element, at, far))
            {
                for (int set = 0; set < _sets; set++)
                {
                    fields[set] = Space.Plus(fields[set], far[set]);
                }

                continue;
            }

            element.Body.PatchFields(element.Number, at.XM, at.YM, at.ZM, patch);
            for (int k = 0, waves = element.Body.Waves; k < _sets * waves; k++)
            {
                fields[k / waves] = Space.Plus(fields[k / waves], Space.Times(patch[k % waves], element.Density[k]));
            }
        }
    }

    /// <summary>False, and nothing of use in <paramref name="fields"/>, when the element is too close to act by points.</summary>
    private bool AddPoints(Element element, Vector3M at, Span<Vector3M> fields)
    {
        for (int k = element.First; k < element.End; k++)
        {
            double dx = at.XM - _x[k],
                dy = at.YM - _y[k],
                dz = at.ZM - _z[k],
                square = dx * dx + dy * dy + dz * dz;
            if (square < element.NearSquare)
            {
                return false;
            }

            double inverse = 1 / (square * Math.Sqrt(square));
            for (int set = 0; set < _sets; set++)
            {
                double weight = _charge[k * _sets + set] * inverse;
                fields[set] = new Vector3M(fields[set].XM + weight * dx, fields[set].YM + weight * dy, fields[set].ZM + weight * dz);
            }
        }

        return true;
    }

    private sealed record Element(MagneticBody Body, int Number, int First, int End, double NearSquare, double[] Density);
}
