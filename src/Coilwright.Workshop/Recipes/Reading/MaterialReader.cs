using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads "material" and the values that override its table.</summary>
internal static class MaterialReader
{
    public static RecipeMaterial Read(JsonFields fields, bool magnet = true)
    {
        string name = fields.Word("material", Catalogue.Materials, required: true) ?? "";
        double? permeability = fields.Number("relativePermeability", 1, 1e6);
        Entered? conductivity = fields.Optional("conductivity", Allowed.Conductivity);
        if (magnet)
        {
            return new RecipeMaterial(name, permeability, conductivity, fields.Optional("polarisation", Allowed.Polarisation));
        }

        fields.Refuse("polarisation", "only poles and magnets have a polarisation");
        return new RecipeMaterial(name, permeability, conductivity, null);
    }
}
