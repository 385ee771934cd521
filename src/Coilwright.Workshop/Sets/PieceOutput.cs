namespace Coilwright.Workshop.Sets;

/// <summary>The output of one piece: its recipe's forecast, scaled by what was measured of it.</summary>
/// <param name="VoltsPerSpeed">Mean over the strings, V per m/s of vertical string speed, the pickup bare; above 0.</param>
/// <param name="How">By what it was scaled.</param>
public sealed record PieceOutput(double VoltsPerSpeed, string How)
{
    /// <summary>The same as a level, dB against 1 V per m/s.</summary>
    public double LevelDb => 20 * Math.Log10(VoltsPerSpeed);
}
