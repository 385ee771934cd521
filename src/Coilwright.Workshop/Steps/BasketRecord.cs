namespace Coilwright.Workshop.Steps;

/// <summary>A potting basket as it went in. Never edited.</summary>
public sealed record BasketRecord
{
    /// <summary>Client-made id.</summary>
    public required Guid Id { get; init; }

    /// <summary>What hangs on it.</summary>
    public required string Label { get; init; }

    /// <summary>"wax", "lacquer" or "epoxy".</summary>
    public required string Kind { get; init; }

    /// <summary>Lot of what is in the bath.</summary>
    public required string Lot { get; init; }

    /// <summary>Shortest time in the bath, s.</summary>
    public required double LeastS { get; init; }

    /// <summary>Hottest that the plastics in it bear, °C.</summary>
    public required double LimitC { get; init; }

    /// <summary>Whose limit that is.</summary>
    public required string LimitOf { get; init; }
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }
}
