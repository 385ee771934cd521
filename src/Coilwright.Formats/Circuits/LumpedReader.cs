using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Circuits;

/// <summary>Reads a measured pickup without geometry (format coilwright.lumped/1) and tells every mistake at once.</summary>
public static class LumpedReader
{
    public const string Format = "coilwright.lumped/1";

    /// <summary>The pickup, or every problem.</summary>
    public static ReadOutcome<LumpedPickup> Read(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    private static LumpedPickup Whole(JsonFields fields)
    {
        fields.Free("name", "notes", "tags");
        return Parts(fields);
    }

    /// <summary>The fields of one measured winding.</summary>
    internal static LumpedPickup Parts(JsonFields fields)
    {
        double ohm = fields.Required("resistance", Allowed.DcResistance with { Example = "7.8 kΩ" }).Si;
        double henry = fields.Required("inductance", Allowed.Inductance with { Example = "4.4 H" }).Si;
        double farad = fields.Required("capacitance", Allowed.LoadCapacitance with { Example = "120 pF" }).Si;
        return new LumpedPickup(ohm, henry, farad)
        {
            Eddy = [.. fields.Objects("eddy", Branch, 24).Where(branch => branch is not null).Select(branch => branch.Value)],
            ParallelLossOhm = fields.Optional("parallelLoss", Allowed.LossResistance)?.Si,
        };
    }

    private static Boxed Branch(JsonFields fields) =>
        new(
            new EddyBranch(
                fields.Required("inductance", Allowed.Inductance with { Example = "0.9 H" }).Si,
                fields.Required("resistance", Allowed.LossResistance with { Example = "60 kΩ" }).Si
            )
        );

    private sealed record Boxed(EddyBranch Value);
}
