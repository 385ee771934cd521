using System.Globalization;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads one entry of "poles".</summary>
internal static class PoleReader
{
    private const int MostPoles = 36;
    private static readonly string[] s_shapes = ["rod", "screw", "blade"];
    private static readonly string[] s_magnetised = ["north-up", "south-up", "none"];

    public static RecipePole Read(JsonFields fields)
    {
        fields.Free("notes");
        PoleShape shape = fields.Word("shape", s_shapes, required: true) switch
        {
            "screw" => PoleShape.Screw,
            "blade" => PoleShape.Blade,
            _ => PoleShape.Rod,
        };
        RecipeMaterial material = MaterialReader.Read(fields);
        (Entered diameter, Entered? width) = Section(fields, shape);
        (Entered? headDiameter, Entered? headHeight) = Head(fields, shape);
        IReadOnlyList<double> positions = Positions(fields, shape);
        return new RecipePole
        {
            Shape = shape,
            Material = material,
            Diameter = diameter,
            Width = width,
            Length = fields.Required("length", Allowed.PoleSize),
            HeadDiameter = headDiameter,
            HeadHeight = headHeight,
            PositionsM = positions,
            TopsM = Tops(fields, positions.Count),
            NorthUp = fields.Word("magnetised", s_magnetised) switch
            {
                "north-up" => 1,
                "south-up" => -1,
                _ => 0,
            },
            Grounded = fields.Truth("grounded"),
        };
    }

    private static (Entered Diameter, Entered? Width) Section(JsonFields fields, PoleShape shape)
    {
        if (shape == PoleShape.Blade)
        {
            fields.Refuse("diameter", "a blade has no diameter; give its width (along the row of strings) and thickness");
            return (fields.Required("thickness", Allowed.PoleSize with { Example = "3 mm" }), fields.Required("width", Allowed.BladeWidth));
        }

        fields.Refuse("width", "only a blade has a width; a rod or screw has a diameter");
        fields.Refuse("thickness", "only a blade has a thickness; a rod or screw has a diameter");
        return (fields.Required("diameter", Allowed.PoleSize), null);
    }

    private static (Entered? Diameter, Entered? Height) Head(JsonFields fields, PoleShape shape)
    {
        if (shape == PoleShape.Screw)
        {
            return (
                fields.Optional("headDiameter", Allowed.PoleSize),
                fields.Optional("headHeight", Allowed.PoleSize with { Example = "1.5 mm" })
            );
        }

        fields.Refuse("headDiameter", "only a screw has a head");
        fields.Refuse("headHeight", "only a screw has a head");
        return (null, null);
    }

    private static IReadOnlyList<double> Positions(JsonFields fields, PoleShape shape)
    {
        if (fields.Has("positions"))
        {
            fields.Refuse("count", "give either positions, or count and spacing");
            fields.Refuse("spacing", "give either positions, or count and spacing");
            IReadOnlyList<Entered> listed = fields.Quantities("positions", Allowed.Place, MostPoles) ?? [];
            if (listed.Count == 0)
            {
                fields.Problems.Add(fields.PathOf("positions"), "at least one position is needed", "[]");
            }

            return [.. listed.Select(place => place.Si)];
        }

        fields.Free("positions");
        double count = fields.Number("count", 1, MostPoles, required: shape != PoleShape.Blade, whole: true) ?? 1;
        Entered? spacing = count > 1 ? fields.Required("spacing", Allowed.PoleSpacing) : fields.Optional("spacing", Allowed.PoleSpacing);
        return double.IsNaN(count)
            ? []
            : [.. Enumerable.Range(0, (int)count).Select(i => count > 1 ? (i - (count - 1) / 2) * spacing!.Value.Si : 0)];
    }

    private static IReadOnlyList<double> Tops(JsonFields fields, int count)
    {
        if (!fields.Has("tops"))
        {
            fields.Free("tops");
            double top = fields.Required("top", Allowed.Place).Si;
            return [.. Enumerable.Repeat(top, count)];
        }

        fields.Refuse("top", "give either top, or tops");
        IReadOnlyList<Entered> listed = fields.Quantities("tops", Allowed.Place, MostPoles) ?? [];
        if (listed.Count != count && count > 0)
        {
            fields.Problems.Add(
                fields.PathOf("tops"),
                "as many tops as poles are needed",
                listed.Count.ToString(CultureInfo.InvariantCulture) + " tops",
                count.ToString(CultureInfo.InvariantCulture) + " poles"
            );
            return [.. Enumerable.Repeat(double.NaN, count)];
        }

        return [.. listed.Select(top => top.Si)];
    }
}
