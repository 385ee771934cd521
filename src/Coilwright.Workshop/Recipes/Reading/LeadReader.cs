using Coilwright.Physics.Electrostatics;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads "leads".</summary>
internal static class LeadReader
{
    /// <summary>The constructions, in the order of <see cref="LeadConstruction"/>.</summary>
    public static IReadOnlyList<string> Constructions { get; } =
    ["single-braided", "two-conductor-screened", "four-conductor-screened", "unscreened-pair"];

    public static LeadModel Read(JsonFields fields)
    {
        fields.Free("notes");
        string? word = fields.Word("construction", Constructions, required: true);
        LeadConstruction construction = (LeadConstruction)Math.Max(0, Constructions.ToList().IndexOf(word ?? ""));
        if (word is not null && construction == LeadConstruction.UnscreenedPair)
        {
            fields.Refuse("toScreen", "an unscreened pair has no screen; give the capacitance between its two wires");
        }

        if (word is not null && construction == LeadConstruction.SingleBraided)
        {
            fields.Refuse("between", "a single conductor has none beside it; give its capacitance to the braid, toScreen");
        }

        return new LeadModel
        {
            Construction = construction,
            LengthM = fields.Optional("length", Allowed.LeadLength)?.Si,
            ToScreenFPerM = fields.Optional("toScreen", Allowed.CablePerLength with { Example = "120 pF/m" })?.Si,
            BetweenFPerM = fields.Optional("between", Allowed.CablePerLength with { Example = "60 pF/m" })?.Si,
        };
    }
}
