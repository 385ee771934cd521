using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>Reads entries of "magnets" and "metalwork".</summary>
internal static class PartsReader
{
    private static readonly string[] s_directions = ["x", "-x", "y", "-y", "z", "-z", "none"];
    private static readonly string[] s_shapes = ["cover", "plate", "keeper"];
    private static readonly string[] s_sheetOnly = ["thickness", "length", "width", "top", "bottom", "corner"];
    private static readonly string[] s_keeperOnly = ["size", "centre"];

    public static RecipeMagnet Magnet(JsonFields fields)
    {
        fields.Free("notes");
        fields.Word("shape", ["bar"], required: true);
        return new RecipeMagnet(
            MaterialReader.Read(fields),
            Point(fields, "size", Allowed.PartSize, "[\"62 mm\", \"12.5 mm\", \"3.2 mm\"]"),
            Point(fields, "centre", Allowed.Place, "[\"0 mm\", \"0 mm\", \"-11 mm\"]"),
            fields.Word("magnetised", s_directions, required: true) ?? "none"
        )
        {
            Grounded = fields.Truth("grounded"),
            Making = MakingReader.Read(fields),
        };
    }

    public static RecipeMetalwork Metalwork(JsonFields fields)
    {
        fields.Free("notes");
        MetalworkShape shape = fields.Word("shape", s_shapes, required: true) switch
        {
            "plate" => MetalworkShape.Plate,
            "keeper" => MetalworkShape.Keeper,
            _ => MetalworkShape.Cover,
        };
        RecipeMaterial material = MaterialReader.Read(fields, magnet: false);
        return shape == MetalworkShape.Keeper ? Keeper(fields, material) : Sheet(fields, shape, material);
    }

    private static RecipeMetalwork Keeper(JsonFields fields, RecipeMaterial material)
    {
        foreach (string name in s_sheetOnly)
        {
            fields.Refuse(name, "a keeper is given by its size and centre");
        }

        return new RecipeMetalwork
        {
            Shape = MetalworkShape.Keeper,
            Material = material,
            Grounded = fields.Truth("grounded"),
            Size = Point(fields, "size", Allowed.PartSize, "[\"60 mm\", \"6 mm\", \"3 mm\"]"),
            Centre = Point(fields, "centre", Allowed.Place, "[\"0 mm\", \"9 mm\", \"-11 mm\"]"),
            Making = MakingReader.Read(fields),
        };
    }

    private static RecipeMetalwork Sheet(JsonFields fields, MetalworkShape shape, RecipeMaterial material)
    {
        foreach (string name in s_keeperOnly)
        {
            fields.Refuse(name, "only a keeper has this; a cover or plate has length, width, top and bottom");
        }

        RecipeMetalwork part = new()
        {
            Shape = shape,
            Material = material,
            Thickness = fields.RequiredSize("thickness", Allowed.Sheet),
            Length = fields.RequiredSize("length", Allowed.PartSize with { Example = "70 mm" }),
            Width = fields.RequiredSize("width", Allowed.PartSize with { Example = "38 mm" }),
            Top = fields.RequiredSize("top", Allowed.Place with { Example = "7.5 mm" }),
            Bottom = fields.RequiredSize("bottom", Allowed.Place with { Example = "-6 mm" }),
            Corner = fields.OptionalSize("corner", Allowed.EndRadius),
            Grounded = fields.Truth("grounded"),
            Making = MakingReader.Read(fields),
        };
        CheckSheet(fields, part);
        return part;
    }

    private static void CheckSheet(JsonFields fields, RecipeMetalwork part)
    {
        if (part.Bottom.Si >= part.Top.Si)
        {
            fields.Problems.Add(
                fields.PathOf("bottom"),
                "the bottom must lie below the top",
                QuantityParser.Echo(part.Bottom, QuantityKind.Length),
                "below " + QuantityParser.Echo(part.Top, QuantityKind.Length)
            );
        }

        if (part.Thickness.Si > part.Top.Si - part.Bottom.Si + RecipeChecks.SlackM && part.Bottom.Si < part.Top.Si)
        {
            fields.Problems.Add(
                fields.PathOf("thickness"),
                "thicker than the part is from bottom to top",
                QuantityParser.Echo(part.Thickness, QuantityKind.Length),
                "at most " + QuantityParser.FormatIn(part.Top.Si - part.Bottom.Si, QuantityKind.Length, "mm")
            );
        }

        double halfM = Math.Min(part.Length.Si, part.Width.Si) / 2;
        if (part.Corner is Entered corner && corner.Si > halfM + RecipeChecks.SlackM)
        {
            fields.Problems.Add(
                fields.PathOf("corner"),
                "a corner cannot be rounder than half the smaller side",
                QuantityParser.Echo(corner, QuantityKind.Length),
                "at most " + QuantityParser.FormatIn(halfM, QuantityKind.Length, "mm")
            );
        }

        if (part.Thickness.Si > halfM)
        {
            fields.Problems.Add(
                fields.PathOf("thickness"),
                "thicker than half the part is wide",
                QuantityParser.Echo(part.Thickness, QuantityKind.Length),
                "at most " + QuantityParser.FormatIn(halfM, QuantityKind.Length, "mm")
            );
        }
    }

    private static RecipePoint Point(JsonFields fields, string name, Limits limits, string example)
    {
        bool given = fields.Has(name);
        int before = fields.Problems.All.Count;
        IReadOnlyList<Entered> values = fields.Quantities(name, limits, 3, example, areSizes: true) ?? [];
        if (values.Count == 3)
        {
            return new RecipePoint(values[0], values[1], values[2]);
        }

        if (given && fields.Problems.All.Count == before)
        {
            fields.Problems.Add(fields.PathOf(name), $"three values are needed, along x, y and z; for example {example}");
        }

        return new RecipePoint(Entered.Unknown, Entered.Unknown, Entered.Unknown);
    }
}
