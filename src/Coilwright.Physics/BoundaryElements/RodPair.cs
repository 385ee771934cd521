namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// Normal field on the rings of one rod per unit density of each wave on the rings of another, in the frame whose x axis runs from the
/// source to the target.
/// </summary>
/// <remarks>
/// In that frame waves even about the line act on even ones only, odd on odd; equal pairs of rods share it whatever way they point.
/// </remarks>
internal sealed class RodPair
{
    private readonly int _orders,
        _rows,
        _columns;
    private readonly double[] _even,
        _odd;

    public RodPair(RingBody target, RingBody source)
    {
        (_orders, _rows, _columns) = (source.Azimuth.Harmonics + 1, target.Stride, source.Stride);
        _even = new double[_orders * _orders * _rows * _columns];
        _odd = new double[source.Azimuth.Sines ? _even.Length : 0];
        double apart = Math.Sqrt((target.X - source.X) * (target.X - source.X) + (target.Y - source.Y) * (target.Y - source.Y));
        Fill(target.Mesh, source.Mesh, apart, target.Bottom - source.Bottom, Samples(target, source, apart));
        RemoveMeans(target.Mesh.Area);
    }

    /// <summary>Field on a ring as one wave from every ring of the source with another, both even or both odd about the line.</summary>
    public ReadOnlySpan<double> Row(bool odd, int to, int from, int row) =>
        (odd ? _odd : _even).AsSpan(((to * _orders + from) * _rows + row) * _columns, _columns);

    private static int Samples(RingBody target, RingBody source, double apart)
    {
        if (apart < 1e-9)
        {
            return source.Azimuth.Harmonics + 1;
        }

        double reach = apart - target.Mesh.Rho[target.Stride / 2] - source.Mesh.Rho[source.Stride / 2];
        return Math.Max(
            source.Azimuth.Harmonics + 2,
            reach < 4 * source.Mesh.Rho[source.Stride / 2] ? target.Around / 2 : target.Around / 4
        );
    }

    private void Fill(RingMesh target, RingMesh source, double apart, double lift, int samples)
    {
        RingBands bands = source.Bands;
        double[] radial = new double[_orders * bands.Padded],
            around = new double[_orders * bands.Padded],
            axial = new double[_orders * bands.Padded];
        for (int s = 0; s < samples; s++)
        {
            double angle = Math.PI * (s + 0.5) / samples,
                co = Math.Cos(angle),
                si = Math.Sin(angle);
            for (int i = 0; i < _rows; i++)
            {
                double px = apart + target.Rho[i] * co,
                    py = target.Rho[i] * si,
                    rho = Math.Max(1e-9, Math.Sqrt(px * px + py * py)),
                    seen = Math.Atan2(py, px);
                bands.Fields(rho, lift + target.Z[i], _orders, radial, around, axial);
                // Components of the target's normal along and across the radius from the source.
                double along = target.NormalRho[i] * (px * co + py * si) / (rho * samples),
                    across = target.NormalRho[i] * (px * si - py * co) / (rho * samples),
                    up = target.NormalZ[i] / samples;
                for (int from = 0; from < _orders; from++)
                {
                    double cos = Math.Cos(from * seen),
                        sin = Math.Sin(from * seen);
                    int start = from * bands.Padded;
                    for (int to = 0; to < _orders; to++)
                    {
                        double toEven = to == 0 ? 1 : 2 * Math.Cos(to * angle),
                            toOdd = 2 * Math.Sin(to * angle);
                        Spread(
                            (to * _orders + from) * _rows + i,
                            radial.AsSpan(start, _columns),
                            around.AsSpan(start, _columns),
                            axial.AsSpan(start, _columns),
                            (toEven * cos * along, toEven * sin * across, toEven * cos * up),
                            (toOdd * sin * along, -toOdd * cos * across, toOdd * sin * up)
                        );
                    }
                }
            }
        }
    }

    private void Spread(
        int row,
        ReadOnlySpan<double> radial,
        ReadOnlySpan<double> around,
        ReadOnlySpan<double> axial,
        (double R, double A, double Z) even,
        (double R, double A, double Z) odd
    )
    {
        Span<double> evens = _even.AsSpan(row * _columns, _columns);
        Rows.Subtract(evens, radial, -even.R);
        Rows.Subtract(evens, around, -even.A);
        Rows.Subtract(evens, axial, -even.Z);
        if (_odd.Length > 0)
        {
            Span<double> odds = _odd.AsSpan(row * _columns, _columns);
            Rows.Subtract(odds, radial, -odd.R);
            Rows.Subtract(odds, around, -odd.A);
            Rows.Subtract(odds, axial, -odd.Z);
        }
    }

    /// <summary>No net flux of a charge outside enters a closed surface.</summary>
    private void RemoveMeans(double[] area)
    {
        double total = area.Sum();
        for (int from = 0; from < _orders; from++)
        {
            for (int j = 0; j < _columns; j++)
            {
                double flux = 0;
                for (int i = 0; i < _rows; i++)
                {
                    flux += area[i] * _even[(from * _rows + i) * _columns + j];
                }

                for (int i = 0; i < _rows; i++)
                {
                    _even[(from * _rows + i) * _columns + j] -= flux / total;
                }
            }
        }
    }
}
