using Coilwright.Physics.Circuit;

namespace Coilwright.Application.Solving;

/// <summary>A question asked backwards, as typed.</summary>
/// <param name="Wants">What is wanted, one each.</param>
/// <param name="Vary">What may change; null when nothing was said.</param>
/// <param name="Load">What hangs on the pickup.</param>
public sealed record SolveRequest(IReadOnlyList<string> Wants, string? Vary, LoadCircuit Load)
{
    /// <summary>Axes of the trade-off; null takes the usual ones.</summary>
    public string? Front { get; init; }

    /// <summary>Most recipes on the front; null takes the usual number.</summary>
    public int? Points { get; init; }

    /// <summary>Cores it may take at once; -1 takes all.</summary>
    public int Threads { get; init; } = -1;

    /// <summary>What stands before the names of fields where the person typed them: "--" at the command line.</summary>
    public string Mark { get; init; } = "";
}
