using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Labels;

/// <summary>Tags of baskets and mixes, from the shop's records.</summary>
public static class ProcessTags
{
    /// <summary>The tag of a basket in the bath.</summary>
    /// <param name="basket">The basket.</param>
    /// <param name="code">Its id, for the code.</param>
    /// <param name="zone">The shop's time zone.</param>
    public static ProcessTag Of(PottingBasket basket, string code, TimeZoneInfo zone) =>
        new(
            code,
            "Basket, " + basket.Kind,
            basket.Label,
            ("Earliest out", ShopTime.Words(basket.EarliestOutUtc, zone)),
            [
                ("In at", ShopTime.Words(basket.InUtc, zone)),
                ("Lot", Said(basket.Lot)),
                ("Pieces", basket.Pieces.Count.ToString(CultureInfo.InvariantCulture)),
                ("Never above", $"{Degrees(basket.LimitC)}, limit of {Said(KeyLabels.Of(basket.LimitOf))}"),
                ("Out at", "______________ by ________"),
            ],
            string.Join(' ', Cautions.ForBath(basket.Kind))
        );

    /// <summary>The tag of a mix of ink.</summary>
    /// <param name="mix">The mix.</param>
    /// <param name="code">Its id, for the code.</param>
    /// <param name="zone">The shop's time zone.</param>
    /// <param name="printedUtc">When the print was made that its cure is told for; the mixing where null.</param>
    public static ProcessTag Of(InkMix mix, string code, TimeZoneInfo zone, DateTimeOffset? printedUtc = null)
    {
        DateTimeOffset printed = printedUtc ?? mix.MixedUtc;
        CureClock cure = mix.Cure(printed);
        string days = string.Create(CultureInfo.InvariantCulture, $"{(cure.EndUtc - printed).TotalDays:0.0} days");
        return new ProcessTag(
            code,
            "Ink mix",
            mix.Label,
            ("Discard at", ShopTime.Words(mix.DiscardUtc, zone)),
            [
                ("Mixed at", $"{ShopTime.Words(mix.MixedUtc, zone)}, {Degrees(mix.RoomC)}"),
                ("Lots", Said(mix.Lots)),
                printedUtc is null ? ("Cure takes", days + " from the print") : ("Printed at", ShopTime.Words(printed, zone)),
                ("Cured at", ShopTime.Words(cure.EndUtc, zone) + (printedUtc is null ? ", if printed when mixed" : $", {days} later")),
                ("Rule", mix.Rule.Words),
            ],
            string.Join(' ', Cautions.For(Job.Marking))
        );
    }

    private static string Degrees(double celsius) => QuantityParser.Format(celsius, QuantityKind.Temperature);

    private static string Said(string text) => string.IsNullOrWhiteSpace(text) ? "not stated" : text;
}
