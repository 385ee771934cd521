namespace Coilwright.Physics.BoundaryElements;

/// <summary>
/// How the charge of a rod may change around its axis: 1, cos φ, sin φ, cos 2φ …; without sines if x is a line of symmetry.
/// </summary>
internal sealed class Azimuth
{
    /// <param name="harmonics">Highest m.</param>
    /// <param name="sines">True if sines are wanted too.</param>
    /// <param name="paired">True if waves have the same density on two rings each.</param>
    public Azimuth(int harmonics, bool sines, bool paired)
    {
        (Harmonics, Sines, Paired) = (harmonics, sines && harmonics > 0, paired);
        List<(int Order, bool Sine)> waves = [(0, false)];
        for (int m = 1; m <= harmonics; m++)
        {
            waves.Add((m, false));
            if (sines)
            {
                waves.Add((m, true));
            }
        }

        Waves = [.. waves];
    }

    public int Harmonics { get; }
    public bool Sines { get; }
    public bool Paired { get; }

    /// <summary>The functions in the order of a body's elements.</summary>
    public (int Order, bool Sine)[] Waves { get; }

    /// <summary>Value of a function at an angle.</summary>
    public double At(int wave, double angle)
    {
        (int order, bool sine) = Waves[wave];
        if (order == 0)
        {
            return 1;
        }

        return sine ? Math.Sin(order * angle) : Math.Cos(order * angle);
    }

    /// <summary>Shares by which a value at an angle, one of several evenly spaced, adds to each function's coefficient.</summary>
    public double[] Shares(double angle, int samples) =>
        [.. Waves.Select((wave, f) => At(f, angle) * (wave.Order == 0 ? 1.0 : 2.0) / samples)];

    /// <summary>Sign of a function under φ → π − φ.</summary>
    public int MirrorSign(int wave) => (Waves[wave].Order % 2 == 0) != Waves[wave].Sine ? 1 : -1;
}
