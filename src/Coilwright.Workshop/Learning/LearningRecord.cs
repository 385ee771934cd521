namespace Coilwright.Workshop.Learning;

/// <summary>What a record of learning says.</summary>
public enum LearningAct
{
    /// <summary>A set of corrections was worked out from the readings.</summary>
    Proposed,

    /// <summary>A proposed set holds for later forecasts.</summary>
    Accepted,

    /// <summary>A proposed set does not hold.</summary>
    Declined,

    /// <summary>A line ended: what was read before says nothing of what comes.</summary>
    Closed,
}

/// <summary>One step of what the shop learns. Never edited: a set is followed by another, and a line that ended by a new one.</summary>
public sealed record LearningRecord
{
    /// <summary>Made by the client.</summary>
    public required Guid Id { get; init; }

    /// <summary>What it says.</summary>
    public required LearningAct Act { get; init; }

    /// <summary>Number of the set, from 1; of an ended line, which ending of the shop it is.</summary>
    public required int Number { get; init; }

    /// <summary>Key of the line that ended; empty otherwise.</summary>
    public string Line { get; init; } = "";

    /// <summary>The set as proposed; empty otherwise.</summary>
    public string Json { get; init; } = "";

    /// <summary>Why; of a proposal perhaps empty.</summary>
    public string Reason { get; init; } = "";

    /// <summary>Version of the program that wrote it.</summary>
    public required string Program { get; init; }

    /// <summary>Who.</summary>
    public string Person { get; init; } = "";

    /// <summary>When.</summary>
    public required DateTimeOffset TimeUtc { get; init; }
}
