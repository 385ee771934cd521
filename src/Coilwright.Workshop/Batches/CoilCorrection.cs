namespace Coilwright.Workshop.Batches;

/// <summary>What a person corrects of one coil: its readings in force, its tag, or both.</summary>
public sealed record CoilCorrection
{
    /// <summary>Made by the client; sent twice it corrects once.</summary>
    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }

    /// <summary>The coil.</summary>
    public required string Tag { get; init; }

    /// <summary>The tag it should have had; empty leaves it.</summary>
    public string NewTag { get; init; } = "";

    /// <summary>Readings as they should stand. One that is not named stays.</summary>
    public IReadOnlyList<ReadingAsWritten> Readings { get; init; } = [];

    /// <summary>Why; a few words.</summary>
    public string Reason { get; init; } = "";
    public string Person { get; init; } = "";
}
