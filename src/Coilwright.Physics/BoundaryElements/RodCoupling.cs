namespace Coilwright.Physics.BoundaryElements;

/// <summary>A winding's field on the rings of a rod.</summary>
internal static class RodCoupling
{
    private static readonly GaussRule AxisRule = GaussRule.WithNodes(2);

    /// <summary>Coefficients of the normal field on each ring, the mean freed of its mean over the body, and of the potential.</summary>
    /// <remarks>
    /// The mean potential goes up the axis by integration of H_z, then out to the ring: around the axis the mean radial field is αρ + βρ³
    /// with
    /// α = −½ dH_z/dz on the axis, and β follows from the mean radial field at the ring itself. The potential's waves follow from the field
    /// around
    /// the ring: H_φ = −∂ψ/ρ∂φ.
    /// </remarks>
    public static void Couple(CoilField coil, RingBody rod, double[] drive, double[] potential)
    {
        RingMesh mesh = rod.Mesh;
        int[] order = [.. Enumerable.Range(0, mesh.Count).OrderBy(i => mesh.Z[i])];
        Rounds rounds = new(coil, rod);
        double level = double.NaN,
            onAxis = 0,
            alpha = 0,
            flux = 0,
            area = 0;
        foreach (int i in order)
        {
            double z = rod.Bottom + mesh.Z[i],
                rho = mesh.Rho[i];
            if (!(Math.Abs(z - level) < 1e-12))
            {
                onAxis -= double.IsNaN(level) ? 0 : AlongAxis(coil, rod, level, z);
                alpha = -Slope(coil, rod, z, 0.02 * rho) / 2;
                level = z;
            }

            double radial = rounds.Fill(i, drive, potential);
            potential[i] = onAxis - rho / 4 * (radial + alpha * rho);
            flux += mesh.Area[i] * drive[i];
            area += mesh.Area[i];
        }

        for (int i = 0; i < mesh.Count; i++)
        {
            drive[i] -= flux / area;
        }
    }

    private static double AlongAxis(CoilField coil, RingBody rod, double from, double to)
    {
        double sum = 0;
        for (int g = 0; g < AxisRule.At.Length; g++)
        {
            sum += AxisRule.Weight[g] * coil.ComputeField(rod.X, rod.Y, from + AxisRule.At[g] * (to - from)).ZM;
        }

        return sum * (to - from);
    }

    private static double Slope(CoilField coil, RingBody rod, double z, double step) =>
        (coil.ComputeField(rod.X, rod.Y, z + step).ZM - coil.ComputeField(rod.X, rod.Y, z - step).ZM) / (2 * step);

    /// <summary>Points around each ring; with the winding's long axis through the rod, half the circle tells all.</summary>
    private sealed class Rounds
    {
        private readonly CoilField _coil;
        private readonly RingBody _rod;
        private readonly double[] _cos,
            _sin;
        private readonly double[][] _shares,
            _waves;

        public Rounds(CoilField coil, RingBody rod)
        {
            (_coil, _rod) = (coil, rod);
            bool halved = coil.IsMirroredAbout(rod.Y);
            int around = Math.Max(rod.Around, 4 * rod.Azimuth.Harmonics),
                samples = halved ? around / 2 : around;
            double[] angles = [.. Enumerable.Range(0, samples).Select(s => (s + 0.5) * (halved ? Math.PI : 2 * Math.PI) / samples)];
            (_cos, _sin) = ([.. angles.Select(Math.Cos)], [.. angles.Select(Math.Sin)]);
            Azimuth azimuth = rod.Azimuth;
            // Half a circle stands for both: sines vanish there by symmetry.
            _shares =
            [
                .. angles.Select(angle =>
                    azimuth.Shares(angle, samples).Select((share, f) => halved && azimuth.Waves[f].Sine ? 0 : share).ToArray()
                ),
            ];
            _waves =
            [
                .. angles.Select(angle =>
                    azimuth
                        .Waves.Select(wave =>
                        {
                            double turned = wave.Sine ? -Math.Cos(wave.Order * angle) : Math.Sin(wave.Order * angle);
                            return wave.Order == 0 || (halved && wave.Sine) ? 0 : turned * 2 / (wave.Order * samples);
                        })
                        .ToArray()
                ),
            ];
        }

        /// <summary>Adds the coefficients of one ring, but for the mean potential; returns the mean radial field.</summary>
        public double Fill(int ring, double[] drive, double[] potential)
        {
            RingMesh mesh = _rod.Mesh;
            double rho = mesh.Rho[ring],
                mean = 0;
            for (int s = 0; s < _cos.Length; s++)
            {
                (double co, double si) = (_cos[s], _sin[s]);
                Vector3M h = _coil.ComputeField(_rod.X + rho * co, _rod.Y + rho * si, _rod.Bottom + mesh.Z[ring]);
                double radial = h.XM * co + h.YM * si,
                    around = h.YM * co - h.XM * si,
                    normal = mesh.NormalRho[ring] * radial + mesh.NormalZ[ring] * h.ZM;
                mean += radial;
                for (int f = 0, place = ring; f < _shares[s].Length; f++, place += _rod.Stride)
                {
                    drive[place] += _shares[s][f] * normal;
                    potential[place] += _waves[s][f] * rho * around;
                }
            }

            return mean / _cos.Length;
        }
    }
}
