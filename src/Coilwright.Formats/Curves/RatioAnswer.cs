namespace Coilwright.Formats.Curves;

/// <summary>How one curve agrees with the first of its pickup.</summary>
/// <param name="Path">The file.</param>
/// <param name="MissedDb">By how much the fit misses their ratio, dB (root mean square of level, and of angle at 8.69 dB a radian).</param>
/// <param name="MovedDb">By how much the level was moved between the two, dB: the drive or the place of the pickup changed.</param>
public sealed record RatioAnswer(string Path, double MissedDb, double MovedDb);
