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
        PolePlaces positions = Positions(fields, shape),
            tops = Tops(fields, positions.AtM.Count);
        return new RecipePole
        {
            Shape = shape,
            Material = material,
            Diameter = diameter,
            Width = width,
            Length = fields.RequiredSize("length", Allowed.PoleSize),
            HeadDiameter = headDiameter,
            HeadHeight = headHeight,
            PositionsM = positions.AtM,
            PositionsWithinM = positions.WithinM,
            Spacing = positions.Spacing,
            TopsM = tops.AtM,
            TopsWithinM = tops.WithinM,
            Making = MakingReader.Read(fields),
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
            return (
                fields.RequiredSize("thickness", Allowed.PoleSize with { Example = "3 mm" }),
                fields.RequiredSize("width", Allowed.BladeWidth)
            );
        }

        fields.Refuse("width", "only a blade has a width; a rod or screw has a diameter");
        fields.Refuse("thickness", "only a blade has a thickness; a rod or screw has a diameter");
        return (fields.RequiredSize("diameter", Allowed.PoleSize), null);
    }

    private static (Entered? Diameter, Entered? Height) Head(JsonFields fields, PoleShape shape)
    {
        if (shape == PoleShape.Screw)
        {
            return (
                fields.OptionalSize("headDiameter", Allowed.PoleSize),
                fields.OptionalSize("headHeight", Allowed.PoleSize with { Example = "1.5 mm" })
            );
        }

        fields.Refuse("headDiameter", "only a screw has a head");
        fields.Refuse("headHeight", "only a screw has a head");
        return (null, null);
    }

    private static PolePlaces Positions(JsonFields fields, PoleShape shape)
    {
        if (fields.Has("positions"))
        {
            fields.Refuse("count", "give either positions, or count and spacing");
            fields.Refuse("spacing", "give either positions, or count and spacing");
            IReadOnlyList<Entered> listed = fields.Quantities("positions", Allowed.Place, MostPoles, areSizes: true) ?? [];
            if (listed.Count == 0)
            {
                fields.Problems.Add(fields.PathOf("positions"), "at least one position is needed", "[]");
            }

            return PolePlaces.Of(listed);
        }

        fields.Free("positions");
        double count = fields.Number("count", 1, MostPoles, required: shape != PoleShape.Blade, whole: true) ?? 1;
        Entered? spacing =
            count > 1 ? fields.RequiredSize("spacing", Allowed.PoleSpacing) : fields.OptionalSize("spacing", Allowed.PoleSpacing);
        double[] even = double.IsNaN(count)
            ? []
            : [.. Enumerable.Range(0, (int)count).Select(i => count > 1 ? (i - (count - 1) / 2) * spacing!.Value.Si : 0)];
        return new PolePlaces(even, null) { Spacing = even.Length > 1 ? spacing : null };
    }

    private static PolePlaces Tops(JsonFields fields, int count)
    {
        if (!fields.Has("tops"))
        {
            fields.Free("tops");
            Entered top = fields.RequiredSize("top", Allowed.Place);
            return new PolePlaces([.. Enumerable.Repeat(top.Si, count)], top.HalfWidth);
        }

        fields.Refuse("top", "give either top, or tops");
        IReadOnlyList<Entered> listed = fields.Quantities("tops", Allowed.Place, MostPoles, areSizes: true) ?? [];
        if (listed.Count != count && count > 0)
        {
            fields.Problems.Add(
                fields.PathOf("tops"),
                "as many tops as poles are needed",
                listed.Count.ToString(CultureInfo.InvariantCulture) + " tops",
                count.ToString(CultureInfo.InvariantCulture) + " poles"
            );
            return new PolePlaces([.. Enumerable.Repeat(double.NaN, count)], null);
        }

        return PolePlaces.Of(listed);
    }

    /// <summary>Places of a row, and how well they are known together: the widest ± of the list.</summary>
    private sealed record PolePlaces(IReadOnlyList<double> AtM, double? WithinM)
    {
        public Entered? Spacing { get; init; }

        public static PolePlaces Of(IReadOnlyList<Entered> listed) =>
            new([.. listed.Select(place => place.Si)], listed.Max(place => place.HalfWidth));
    }
}
