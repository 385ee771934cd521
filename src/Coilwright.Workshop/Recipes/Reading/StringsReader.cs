using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads "strings".</summary>
internal static class StringsReader
{
    public static RecipeStrings Read(JsonFields fields)
    {
        fields.Free("notes");
        RecipeStrings strings = new()
        {
            Count = fields.Number("count", 1, 24, required: true, whole: true) ?? double.NaN,
            Spacing = fields.Required("spacing", Allowed.PoleSpacing),
            Clearance = fields.RequiredSize("clearance", Allowed.Clearance),
            ScaleLength = fields.Optional("scaleLength", Allowed.ScaleLength),
            FromBridge = fields.Optional("fromBridge", Allowed.FromBridge),
            Gauges = fields.Objects("gauges", One, 24),
            Law = fields.Word("law", ["saturating", "linear"]) ?? "saturating",
            RelativePermeability = fields.Number("relativePermeability", 1, 1e6),
            Saturation = fields.Optional("saturation", Allowed.Saturation),
        };
        if (fields.Has("gauges") && Math.Abs(strings.Gauges.Count - strings.Count) > 0.5)
        {
            fields.Problems.Add(
                fields.PathOf("gauges"),
                "as many gauges as strings are needed",
                strings.Gauges.Count.ToString(CultureInfo.InvariantCulture) + " gauges",
                strings.Count.ToString(CultureInfo.InvariantCulture) + " strings"
            );
        }

        if (strings.FromBridge is Entered fromBridge && strings.ScaleLength is Entered scale && fromBridge.Si >= scale.Si)
        {
            fields.Problems.Add(
                fields.PathOf("fromBridge"),
                "the pickup must lie between bridge and nut",
                QuantityParser.Echo(fromBridge, QuantityKind.Length),
                "less than the scaleLength, " + QuantityParser.Echo(scale, QuantityKind.Length)
            );
        }

        return strings;
    }

    private static RecipeString One(JsonFields fields)
    {
        Entered core = fields.Required("core", Allowed.StringDiameter);
        Entered outer = fields.Optional("outer", Allowed.StringDiameter) ?? core;
        if (core.Si > outer.Si)
        {
            fields.Problems.Add(
                fields.PathOf("core"),
                "the core cannot be thicker than the whole string",
                QuantityParser.Echo(core, QuantityKind.Length),
                "at most " + QuantityParser.Echo(outer, QuantityKind.Length)
            );
        }

        return new RecipeString(core, outer, fields.Word("material", Catalogue.Materials) ?? "string-steel");
    }
}
