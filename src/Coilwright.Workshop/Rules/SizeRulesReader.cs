using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;
using Coilwright.Workshop.Recipes.Sizes;

namespace Coilwright.Workshop.Rules;

/// <summary>Reads "sizes" of the shop's rules: half-widths of lengths without a ±, and their shares from piece to piece.</summary>
internal static class SizeRulesReader
{
    internal static readonly Limits Within = new(QuantityKind.Length, 0, 2e-3, "mm", "0.1 mm");
    internal static readonly Limits Share = new(QuantityKind.Fraction, 0, 1, "%", "20 %");
    internal static readonly Limits Most = new(QuantityKind.Fraction, 1e-3, 0.2, "%", "3 %");

    public static SizeRules Read(JsonFields fields)
    {
        SizeRules usual = SizeRules.Usual;
        double Value(string name, Limits limits, double otherwise) =>
            fields.Optional(name, limits) is { IsKnown: true } entered ? entered.Si : otherwise;
        return new SizeRules
        {
            MeasuredM = Value("measured", Within, usual.MeasuredM),
            MouldedM = Value("moulded", Within, usual.MouldedM),
            ByHandM = Value("byHand", Within, usual.ByHandM),
            CommonM = Value("common", Within, usual.CommonM),
            ClearanceM = Value("clearance", Within, usual.ClearanceM),
            MostPart = Value("mostPart", Most, usual.MostPart),
            MouldedShare = Value("mouldedShare", Share, usual.MouldedShare),
            ByHandShare = Value("byHandShare", Share, usual.ByHandShare),
            CommonShare = Value("commonShare", Share, usual.CommonShare),
            Origin = "by the shop's rules",
        };
    }
}
