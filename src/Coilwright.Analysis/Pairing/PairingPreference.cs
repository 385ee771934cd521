namespace Coilwright.Analysis.Pairing;

/// <summary>By what coils are paired.</summary>
/// <param name="Weight">How much this quantity counts beside the others, above 0.</param>
/// <param name="Offset">By how much the second coil of a pair is meant to exceed the first, in the quantity's own unit; between coils of
/// one family either may.</param>
/// <param name="OffsetFraction">The same as a part of the first coil's value, added to <paramref name="Offset"/>.</param>
public sealed record PairingPreference(double Weight = 1, double Offset = 0, double OffsetFraction = 0)
{
    /// <summary>True when the two coils are meant to differ.</summary>
    public bool HasOffset => Math.Abs(Offset) > 0 || Math.Abs(OffsetFraction) > 0;

    /// <summary>How far a pair is from what is meant, as a part of the smaller value.</summary>
    /// <param name="first">Value of the first coil, above 0.</param>
    /// <param name="second">Value of the second coil, above 0.</param>
    public double Difference(double first, double second) =>
        Math.Abs(second - first - Offset - OffsetFraction * first) / Math.Min(first, second);
}
