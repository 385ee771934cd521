using Coilwright.Analysis.Diagnosis;
using Coilwright.Physics;

namespace Coilwright.Workshop.Readings;

/// <summary>Pass, hold or reject.</summary>
public enum VerdictKind
{
    Pass,
    Hold,
    Reject,
}

/// <summary>One possible cause of what is off.</summary>
public sealed record Cause(string Name, double Probability, string Detail)
{
    /// <summary>True where the coil has it with others of its batch: it is said once for the batch and of no coil.</summary>
    public bool OfBatch { get; init; }
}

/// <summary>The judgement of one coil.</summary>
/// <param name="Kind">Pass, hold or reject.</param>
/// <param name="DcResistanceAt20C">What was compared, Ω; null when there was no usable resistance.</param>
/// <param name="Reasons">Why, in workshop words; at least one.</param>
/// <param name="Causes">Probable causes, most probable first; empty for a plain pass.</param>
public sealed record Verdict(VerdictKind Kind, Estimate? DcResistanceAt20C, IReadOnlyList<string> Reasons, IReadOnlyList<Cause> Causes)
{
    /// <summary>
    /// The causes worth telling a person of this coil: none when the likeliest is that nothing is wrong, or what its batch has.
    /// </summary>
    public IReadOnlyList<Cause> Told =>
        Causes is [{ Name: "none" } or { OfBatch: true }, ..] ? [] : [.. Causes.Where(cause => cause.Name != "none" && !cause.OfBatch)];

    /// <summary>Keys of the likeliest fault and of those that the readings cannot tell from it, the likeliest first.</summary>
    public IReadOnlyList<string> Group { get; init; } = [];

    /// <summary>True where a reading lies outside its limits and is in doubt itself: it is read again before the coil is judged.</summary>
    public bool ReadAgain { get; init; }

    /// <summary>True where a reading lies outside its limits: such a coil moves no chart.</summary>
    public bool OffLimits => Kind == VerdictKind.Reject || ReadAgain;

    /// <summary>Readings that would settle the cause, the most telling first.</summary>
    public IReadOnlyList<NextReading> Next { get; init; } = [];
}
