using System.Globalization;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Sets;

/// <summary>A piece's place in a set.</summary>
/// <param name="SetId">The set.</param>
/// <param name="Name">What the shop calls the set.</param>
/// <param name="Place">Its place: neck, middle, bridge, or the shop's own word.</param>
/// <param name="OffsetDb">By how much its output is meant to lie above the others', dB.</param>
/// <param name="Why">Why this choice and not the closest one; empty for the closest.</param>
/// <param name="Person">Who matched them.</param>
/// <param name="TimeUtc">When.</param>
public sealed record SetMembership(
    Guid SetId,
    string Name,
    string Place,
    double OffsetDb,
    string Why,
    string Person,
    DateTimeOffset TimeUtc
)
{
    /// <summary>In a few words: "set Lantern 3, bridge".</summary>
    public string Words => $"set {Name}, {Place}";

    /// <summary>An offset in words: "+1.5 dB".</summary>
    public static string Decibels(double db) =>
        string.Create(CultureInfo.InvariantCulture, $"{(db < 0 ? "−" : "+")}{Math.Abs(db):0.0#} dB");

    /// <summary>Where a piece stands; null when it stands in no set.</summary>
    public static SetMembership? Of(PieceSnapshot life) => PieceEventLog.Joining(life.History.InForce)?.Membership;
}
