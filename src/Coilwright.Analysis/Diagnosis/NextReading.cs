using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>A reading that would tell the causes apart.</summary>
/// <param name="Quantity">"dcResistance" (once more: cold, on a second meter), "inductance", "q", "turns" (recounted by unwinding or from a
/// marked test) or "wireResistance" (ohms per metre of the spool).</param>
/// <param name="Information">What it is expected to tell about the cause, bits, 0 or more.</param>
public sealed record NextReading(string Quantity, double Information)
{
    /// <summary>What it costs, minutes of a person's time. Our assumption, no source.</summary>
    public double Minutes =>
        Quantity switch
        {
            QuantityKey.Inductance or QuantityKey.Q => 1,
            QuantityKey.DcResistance => 2,
            QuantityKey.WireResistance => 5,
            _ => 10,
        };
}
