namespace Coilwright.Physics.Winding;

/// <summary>Smooth surface over simulated sections: packing factor and capacitance as a share of the even-layer formula.</summary>
internal static class LaySurface
{
    /// <summary>Half of the 95 % interval of the packing factor.</summary>
    public const double PackingHalfWidth = 0.04;

    /// <summary>Values at a pitch and wander in diameters and a number of layers N·d/height.</summary>
    public static (double Packing, double Share) At(double pitch, double jitter, double layers)
    {
        // First fit: from neat to scattered as the wander or the open part of the pitch reaches half a diameter.
        double open = 1 - Math.Exp(-4 * (jitter * jitter + Math.Pow(Math.Max(0, pitch - 1.1), 2)));
        _ = layers;
        return (0.895 - 0.075 * open, 0.985 - 0.225 * open);
    }
}
