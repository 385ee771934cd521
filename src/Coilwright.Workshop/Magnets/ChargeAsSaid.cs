using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Magnets;

/// <summary>What a person said that magnets were charged to.</summary>
/// <param name="Level">To what.</param>
/// <param name="Typed">The same exactly as it was typed.</param>
/// <param name="Charger">With which charger or by what means; empty when nobody said.</param>
public sealed record ChargeAsSaid(MagnetLevel Level, string Typed, string Charger)
{
    /// <summary>An entry with the level that it was understood as.</summary>
    internal static ChargeAsSaid Of(MagnetLevel level, ChargeEntry entry) => new(level, entry.Level.Trim(), entry.Charger.Trim());

    /// <summary>The charge with who said it and when.</summary>
    internal MagnetCharge By(PieceEvent happened) => new(Level, Charger, "", happened.Person, happened.TimeUtc);

    /// <summary>The charge as formats list it among the readings.</summary>
    internal PieceReadingRecord Value(PieceEvent happened) =>
        new()
        {
            Id = ReadingChain.IdWithin(happened.Id, QuantityKey.Charge),
            PieceId = happened.PieceId,
            EventId = happened.Id,
            Quantity = Level.Share is null ? QuantityKey.ChargeField : QuantityKey.Charge,
            Typed = Typed,
            Si = Level.Share ?? Level.FieldT,
            DistanceM = Level.JigM,
            Instrument = Charger,
            TimeUtc = happened.TimeUtc,
        };
}
