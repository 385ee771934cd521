using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Steps;

/// <summary>One basket through the bath.</summary>
/// <param name="Label">What hangs on the basket.</param>
/// <param name="Kind">"wax", "lacquer" or "epoxy".</param>
/// <param name="Lot">Lot of what is in the bath.</param>
/// <param name="Pieces">Tags or serials in the basket.</param>
/// <param name="InUtc">When it went in.</param>
/// <param name="Least">Shortest time in the bath.</param>
/// <param name="LimitC">Hottest the plastics in the basket bear: the lowest of the shop's own limits, °C.</param>
/// <param name="LimitOf">The material that limit belongs to.</param>
public sealed record PottingBasket(
    string Label,
    string Kind,
    string Lot,
    IReadOnlyList<string> Pieces,
    DateTimeOffset InUtc,
    TimeSpan Least,
    double LimitC,
    string LimitOf
)
{
    /// <summary>Earliest moment out.</summary>
    public DateTimeOffset EarliestOutUtc => InUtc + Least;

    /// <summary>What is wrong with it before it goes in; empty when nothing is.</summary>
    /// <param name="bathC">The bath as read, °C.</param>
    public IReadOnlyList<Problem> Check(double bathC)
    {
        List<Problem> problems = [];
        if (string.IsNullOrWhiteSpace(Lot))
        {
            problems.Add(
                new Problem("lot", $"the lot of the {Kind} is missing", Allowed: "what stands on the packet, or \"none on the packet\"")
            );
        }

        if (Pieces.Count == 0)
        {
            problems.Add(new Problem("pieces", "the basket is empty", Allowed: "at least one piece"));
        }

        problems.AddRange(
            Pieces
                .GroupBy(piece => piece, StringComparer.OrdinalIgnoreCase)
                .Where(group => group.Count() > 1)
                .Select(group => new Problem("pieces", "this piece stands in the basket twice", group.Key))
        );
        if (bathC > LimitC)
        {
            problems.Add(new Problem("temperature", Over(bathC), Degrees(bathC), $"up to {Degrees(LimitC)}: let the bath cool first"));
        }

        return problems;
    }

    /// <summary>
    /// The alarm that a reading of the bath raises, and the hold it puts on every piece in the basket; null when the bath is right.
    /// </summary>
    public Hold? Alarm(double bathC, DateTimeOffset readUtc) =>
        bathC > LimitC ? new Hold(Over(bathC) + "; inspect every piece of basket " + Label, readUtc, null) : null;

    /// <summary>Why it may not come out yet; null when it may.</summary>
    public Problem? MayComeOut(DateTimeOffset nowUtc, TimeZoneInfo zone) =>
        nowUtc >= EarliestOutUtc
            ? null
            : new Problem(
                "basket",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"basket {Label} stays at least {Least.TotalMinutes:0.#} min; in at {ShopTime.Words(InUtc, zone)}"
                ),
                ShopTime.Words(nowUtc, zone),
                "from " + ShopTime.Words(EarliestOutUtc, zone)
            );

    private string Over(double bathC) => $"the bath read {Degrees(bathC)}, over the {Degrees(LimitC)} that {KeyLabels.Of(LimitOf)} bears";

    private static string Degrees(double celsius) => QuantityParser.Format(celsius, QuantityKind.Temperature);
}
