namespace Coilwright.Physics.Fields;

/// <summary>Normal field on the rings of one rod per unit density of each wave on the rings of another, in the frame whose x axis runs from the source to the target.</summary>
/// <remarks>In that frame waves even about the line act on even ones only, odd on odd; equal pairs of rods share it whatever way they point.</remarks>
internal sealed class RodPair
{
    private readonly int _orders, _rows, _columns;
    private readonly double[] _even, _odd;

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
        return Math.Max(source.Azimuth.Harmonics + 2, reach < 4 * source.Mesh.Rho[source.Stride / 2] ? target.Around / 2 : target.Around / 4);
    }

    private void Fill(RingMesh target, RingMesh source, double apart, double lift, int samples)
    {
        Span<double> radial = stackalloc double[_orders], around = stackalloc double[_orders], axial = stackalloc double[_orders];
        for (int s = 0; s < samples; s++)
        {
            double angle = Math.PI * (s + 0.5) / samples, co = Math.Cos(angle), si = Math.Sin(angle);
            for (int i = 0; i < _rows; i++)
            {
                double px = apart + target.Rho[i] * co, py = target.Rho[i] * si, rho = Math.Max(1e-9, Math.Sqrt(px * px + py * py)), seen = Math.Atan2(py, px);
                // Components of the target's normal along and across the radius from the source.
                double along = target.NormalRho[i] * (px * co + py * si) / rho, across = target.NormalRho[i] * (px * si - py * co) / rho;
                for (int j = 0; j < _columns; j++)
                {
                    source.Fields(j, rho, lift + target.Z[i], radial, around, axial);
                    Spread(i, j, angle, seen, samples, along, across, target.NormalZ[i], radial, around, axial);
                }
            }
        }
    }

    private void Spread(int i, int j, double angle, double seen, int samples, double along, double across, double up,
        ReadOnlySpan<double> radial, ReadOnlySpan<double> around, ReadOnlySpan<double> axial)
    {
        for (int from = 0; from < _orders; from++)
        {
            double co = from == 0 ? 1 : Math.Cos(from * seen), si = from == 0 ? 0 : Math.Sin(from * seen);
            double straight = along * radial[from] + up * axial[from], turn = across * around[from];
            double even = (straight * co + turn * si) / samples, odd = (straight * si - turn * co) / samples;
            for (int to = 0; to < _orders; to++)
            {
                int place = ((to * _orders + from) * _rows + i) * _columns + j;
                _even[place] += to == 0 ? even : 2 * even * Math.Cos(to * angle);
                if (_odd.Length > 0 && to > 0)
                {
                    _odd[place] += 2 * odd * Math.Sin(to * angle);
                }
            }
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
