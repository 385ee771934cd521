using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Steps;

/// <summary>One mix of two-part ink, with the times of the shop's own sheet.</summary>
/// <param name="Label">What stands on the pot.</param>
/// <param name="Lots">Lots of the parts, as the shop writes them.</param>
/// <param name="MixedUtc">When it was mixed.</param>
/// <param name="Rule">How warmth counts.</param>
/// <param name="PotLife">From the sheet: how long it may be used.</param>
/// <param name="FullCure">From the sheet: when a print is fully hard.</param>
/// <param name="RoomC">The room, °C.</param>
public sealed record InkMix(
    string Label,
    string Lots,
    DateTimeOffset MixedUtc,
    CureRule Rule,
    TimeSpan PotLife,
    TimeSpan FullCure,
    double RoomC
)
{
    /// <summary>When what is left goes away.</summary>
    public DateTimeOffset DiscardUtc => CureClock.Steady(Rule, MixedUtc, PotLife, RoomC).EndUtc;

    /// <summary>The hardening of a print made at a moment.</summary>
    public CureClock Cure(DateTimeOffset printedUtc) => CureClock.Steady(Rule, printedUtc, FullCure, RoomC);

    /// <summary>Whether a print may be made; the reason and what to do when not.</summary>
    /// <param name="atUtc">The moment.</param>
    /// <param name="zone">The shop's time zone, for the words.</param>
    public Problem? MayPrint(DateTimeOffset atUtc, TimeZoneInfo zone)
    {
        if (string.IsNullOrWhiteSpace(Lots))
        {
            return new Problem(
                "lots",
                "the mix states no lots: a print could not be traced",
                Label,
                "the lot of each part, or \"none on the tin\""
            );
        }

        if (atUtc < MixedUtc)
        {
            return new Problem("time", "this is before the ink was mixed", Clock(atUtc, zone), "after " + Clock(MixedUtc, zone));
        }

        return atUtc < DiscardUtc
            ? null
            : new Problem(
                "ink",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"mix {Label} was to be discarded at {Clock(DiscardUtc, zone)}: mixed {Clock(MixedUtc, zone)} at {RoomC:0.#} °C, "
                        + $"pot life {PotLife.TotalHours:0.#} h on its sheet; {Rule.Words}"
                ),
                Clock(atUtc, zone),
                "mix afresh"
            );
    }

    internal static string Clock(DateTimeOffset utc, TimeZoneInfo zone) => ShopTime.Words(utc, zone);
}
