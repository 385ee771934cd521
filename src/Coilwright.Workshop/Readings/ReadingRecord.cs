namespace Coilwright.Workshop.Readings;

/// <summary>
/// One measured value of one coil with its conditions. Never edited: a correction is a new reading that supersedes this one, with a reason.
/// </summary>
public sealed record ReadingRecord
{
    /// <summary>Made by the client; sending the same id twice records it once.</summary>
    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }
    public required string Tag { get; init; }

    /// <summary>Quantity name of the file format, for example "dcResistance".</summary>
    public required string Quantity { get; init; }

    /// <summary>Exactly what was typed or sent.</summary>
    public required string Typed { get; init; }

    /// <summary>Unit as typed or assumed.</summary>
    public required string Unit { get; init; }

    /// <summary>
    /// Value in SI; null when it could not be understood, positive infinity never: an open coil says so in <see cref="Flag"/>.
    /// </summary>
    public double? Si { get; init; }

    /// <summary>Temperature of the coil, °C; null when unknown.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>Frequency of an inductance or Q reading, Hz.</summary>
    public double? AtHz { get; init; }

    /// <summary>Counter reading, if entered with this reading.</summary>
    public double? Turns { get; init; }
    public string Instrument { get; init; } = "";
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>Empty, or why the reading is doubtful: "open", "outside what a coil can read".</summary>
    public string Flag { get; init; } = "";

    /// <summary>The reading this one takes the place of.</summary>
    public Guid? Supersedes { get; init; }

    /// <summary>Why it supersedes; required with <see cref="Supersedes"/>.</summary>
    public string Reason { get; init; } = "";

    /// <summary>
    /// For a tag that is entered again after its undo: true for a new coil, false for the same one; null when nobody said.
    /// </summary>
    public bool? NewCoil { get; init; }

    /// <summary>True for an undo: takes the superseded reading away and puts nothing in its place.</summary>
    public bool Withdraws { get; init; }

    /// <summary>The value by which it is held against others of its quantity, SI; only for a reading that has one.</summary>
    public double Comparable() => Quantities.Quantity.Comparable(Quantity, Si!.Value, TemperatureC);
}
