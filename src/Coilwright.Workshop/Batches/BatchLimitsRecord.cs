namespace Coilwright.Workshop.Batches;

/// <summary>What the coils of a batch are judged against, as it was worked out once; never changed and never worked out anew.</summary>
public sealed record BatchLimitsRecord
{
    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }

    /// <summary>0 for the limits themselves; otherwise the frequency, Hz, at which a reading was first held against the forecast.</summary>
    public required double AtHz { get; init; }

    /// <summary>The values, as <see cref="KeptLimits"/> writes them.</summary>
    public required string Json { get; init; }

    /// <summary>The revision they follow from.</summary>
    public required int RevisionNumber { get; init; }

    /// <summary>Version of the program that worked them out.</summary>
    public required string Program { get; init; }

    /// <summary>Number of the shop's corrections that the forecast took in; 0 for none.</summary>
    public int Calibration { get; init; }

    /// <summary>True when they were written as the batch began; false for a batch that was begun before limits were kept.</summary>
    public required bool AtBegin { get; init; }
    public required DateTimeOffset TimeUtc { get; init; }
}
