namespace Coilwright.Analysis.Pairing;

/// <summary>A coil at hand.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Family">What kind of coil it is; coils of two families go together one of each, coils of one family go together
/// freely.</param>
/// <param name="Values">The quantities it is paired by, each above 0; NaN for one that is not known, which leaves the coil out.</param>
public sealed record PairingCoil(string Tag, string Family, IReadOnlyList<double> Values);
