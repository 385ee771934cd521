using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Magnets;

/// <summary>The charge of a piece's magnets as it was said last: a value on the event that it was done in.</summary>
/// <param name="Level">To what.</param>
/// <param name="Charger">With which charger or by what means; empty when nobody said.</param>
/// <param name="Why">Why it was done again; empty for the step itself.</param>
/// <param name="Person">Who did it.</param>
/// <param name="TimeUtc">When.</param>
public sealed record MagnetCharge(MagnetLevel Level, string Charger, string Why, string Person, DateTimeOffset TimeUtc)
{
    /// <summary>Names of the two quantities that a charge is kept as.</summary>
    public const string ShareQuantity = QuantityKey.Charge,
        FieldQuantity = QuantityKey.ChargeField;

    /// <summary>What is told of a piece whose charge nobody said.</summary>
    public const string Unknown = "charge not recorded";

    /// <summary>In a line: "knocked down to 80 % of full, with coil charger 2".</summary>
    public string Words => Level.Done + (Charger.Length > 0 ? $", with {Charger}" : "") + (Why.Length > 0 ? $"; {Why}" : "");

    /// <summary>What an event says of the charge; null when it says nothing.</summary>
    public static MagnetCharge? Of(PieceEventRecord happened, PieceSnapshot life)
    {
        if (
            life.ReadingsOf(happened).LastOrDefault(reading => reading.Quantity is ShareQuantity or FieldQuantity)
            is not { Si: { } si } told
        )
        {
            return null;
        }

        MagnetLevel level = told.Quantity == ShareQuantity ? new MagnetLevel(si) : new MagnetLevel(null, si, told.DistanceM);
        string why = happened.Kind == PieceEventKind.Charged ? happened.Words : "";
        return new MagnetCharge(level, told.Instrument, why, happened.Person, happened.TimeUtc);
    }

    /// <summary>How the piece's magnets stand: the last charge that was not undone; null when nobody said one.</summary>
    public static MagnetCharge? Of(PieceSnapshot life) =>
        life.History.InForce.Select(one => Of(one, life)).LastOrDefault(charge => charge is not null);

    /// <summary>The piece's charge in a line for screens and papers; empty for a recipe without magnets.</summary>
    public static string Told(PieceSnapshot life) => Of(life)?.Words ?? (ChargeRule.HasMagnets(life.Recipe) ? Unknown : "");

    /// <summary>The value that an event carries for a charge.</summary>
    internal static PieceReadingRecord Record(PieceEventRecord happened, MagnetLevel level, ChargeEntry entry) =>
        new()
        {
            Id = ReadingChain.IdWithin(happened.Id, ShareQuantity),
            PieceId = happened.PieceId,
            EventId = happened.Id,
            Quantity = level.Share is null ? FieldQuantity : ShareQuantity,
            Typed = entry.Level.Trim(),
            Si = level.Share ?? level.FieldT,
            DistanceM = level.JigM,
            Instrument = entry.Charger.Trim(),
            TimeUtc = happened.TimeUtc,
        };
}
