namespace Coilwright.Analysis.Diagnosis;

/// <summary>A reading that would tell the causes apart.</summary>
/// <param name="Quantity">"dcResistance" (once more: cold, on a second meter), "inductance", "q", "turns" (recounted by unwinding or from a
/// marked test) or "wireResistance" (ohms per metre of the spool).</param>
/// <param name="Information">What it is expected to tell about the cause, bits, 0 or more.</param>
public sealed record NextReading(string Quantity, double Information);
