namespace Coilwright.Workshop.Pieces;

/// <summary>One value read of a whole piece, with its conditions. Never edited.</summary>
public sealed record PieceReadingRecord
{
    public required Guid Id { get; init; }
    public required Guid PieceId { get; init; }

    /// <summary>The test or examination it belongs to.</summary>
    public required Guid EventId { get; init; }

    /// <summary>
    /// "dcResistance", "inductance", "q", "acResistance", "loadedPeak", "poleField", "firstSwing". Formats list among them what events say:
    /// "charge" and "chargeField" for what magnets were charged to, "setOffset" (dB) for what is meant of its output in a set.
    /// </summary>
    public required string Quantity { get; init; }

    /// <summary>Exactly what was typed.</summary>
    public required string Typed { get; init; }

    /// <summary>Value in SI; null when the meter found no connection.</summary>
    public double? Si { get; init; }

    /// <summary>Temperature of the piece, °C; null when unknown.</summary>
    public double? TemperatureC { get; init; }

    /// <summary>Frequency, Hz; null where none belongs.</summary>
    public double? AtHz { get; init; }

    /// <summary>Number of the pole from 1, for its field; null elsewhere.</summary>
    public int? Pole { get; init; }

    /// <summary>Distance of the probe from the pole, m; null elsewhere.</summary>
    public double? DistanceM { get; init; }

    /// <summary>Which meter, or for a charge the charger or means; empty when nobody said.</summary>
    public string Instrument { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>The value by which it is held against others of its quantity, SI; no number when the meter found no connection.</summary>
    public double Comparable() => Quantities.Quantity.Comparable(Quantity, Si ?? double.NaN, TemperatureC);
}
