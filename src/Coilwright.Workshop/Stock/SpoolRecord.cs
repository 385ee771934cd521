namespace Coilwright.Workshop.Stock;

/// <summary>One spool of wire as it came in. Never edited.</summary>
public sealed record SpoolRecord
{
    /// <summary>Client-made id.</summary>
    public required Guid Id { get; init; }

    /// <summary>As the shop calls it, for example "0117"; one of a kind.</summary>
    public required string Label { get; init; }

    /// <summary>What was bought together; empty when not known.</summary>
    public string Lot { get; init; } = "";

    /// <summary>What the supplier's label says.</summary>
    public string SupplierText { get; init; } = "";

    /// <summary>"AWG 42" or "0.063 mm".</summary>
    public required string Gauge { get; init; }

    /// <summary>Enamel, a key of the insulation table.</summary>
    public required string Insulation { get; init; }

    /// <summary>Film: "single", "heavy", "grade-1".</summary>
    public required string Build { get; init; }

    /// <summary>Net mass as received, kg; null when not stated.</summary>
    public double? ReceivedKg { get; init; }

    /// <summary>Mass of the empty spool, kg; null when not known.</summary>
    public double? TareKg { get; init; }
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }
}

/// <summary>What was read of a spool.</summary>
public enum SpoolReadingKind
{
    /// <summary>A length was cut off and its resistance measured.</summary>
    Measured,

    /// <summary>The spool was weighed with its wire.</summary>
    Weighed,
}

/// <summary>One reading of a spool with its conditions. Never edited: the newest of a kind holds.</summary>
public sealed record SpoolReadingRecord
{
    public required Guid Id { get; init; }
    public required Guid SpoolId { get; init; }
    public required SpoolReadingKind Kind { get; init; }

    /// <summary>Exactly what was typed.</summary>
    public required string Typed { get; init; }

    /// <summary>Length measured, m.</summary>
    public double? LengthM { get; init; }

    /// <summary>Its resistance, Ω.</summary>
    public double? Ohm { get; init; }

    /// <summary>Its temperature, °C.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>Mass of spool and wire, kg.</summary>
    public double? GrossKg { get; init; }
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }
}
