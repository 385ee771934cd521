using System.Globalization;
using System.Text.Json.Nodes;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>
/// Recipes drawn from a seed: every shape, sizes from the usual to the ends of what the checks allow. Those that the reader refuses are
/// passed over.
/// </summary>
internal sealed class RandomRecipes(int seed)
{
    private static readonly string[] s_materials = [.. MaterialCatalogue.All.Select(material => material.Key)];
    private static readonly string[] s_cores =
    [
        "low-carbon-steel",
        "alnico-5",
        "alnico-2",
        "neodymium",
        "ferrite",
        "string-steel",
        "stainless-steel",
    ];
    private static readonly string[] s_sheets = ["nickel-silver", "brass", "copper", "low-carbon-steel", "stainless-steel"];
    private readonly Random _random = new(seed);
    private bool _wild;

    /// <summary>Recipes tried so far, refused ones among them.</summary>
    public int Tried { get; private set; }

    /// <summary>The next recipe that the reader takes without a problem.</summary>
    public Recipe Next()
    {
        while (true)
        {
            Tried++;
            _wild = Chance(0.35);
            if (RecipeReader.Read(Make().ToJsonString()) is { Value: { } recipe, Problems.Count: 0 })
            {
                return recipe;
            }
        }
    }

    private JsonObject Make()
    {
        int coils = Pick(1, 1, 1, 1, 2, 2, 2, 3, 4);
        JsonObject recipe = new()
        {
            ["format"] = RecipeReader.Format,
            ["name"] = "Drawn",
            ["connection"] = Pick("series", "parallel", "single"),
        };
        double y = 0,
            length = Size(30, 90, 1, 300),
            width = Math.Min(length, Size(2, 20, 0.5, 100)),
            height = Size(3, 16, 0.5, 50);
        JsonArray list = [];
        for (int c = 0; c < coils; c++)
        {
            JsonObject coil = Coil(c, length, width, height);
            if (c > 0 || Chance(0.1))
            {
                coil["position"] = Chance(0.15)
                    ? new JsonObject { ["z"] = Mm(c * (height + Size(0.5, 3, 0, 50))) }
                    : new JsonObject { ["y"] = Mm(y) };
            }

            y += width + Size(1, 12, 0, 60);
            list.Add(coil);
        }

        recipe["coils"] = list;
        if (Chance(0.45))
        {
            recipe["magnets"] = Bars(Pick(1, 1, 2, 3), length, height, magnet: true);
        }

        if (Chance(0.35))
        {
            recipe["metalwork"] = Metalwork(length, y, height);
        }

        if (Chance(0.7))
        {
            recipe["strings"] = new JsonObject
            {
                ["count"] = Pick(4, 5, 6, 6, 7, _wild ? 24 : 8),
                ["spacing"] = Mm(Size(8, 19, 1, 50)),
                ["clearance"] = Mm(Size(1, 6, 0.1, 30)),
            };
        }

        if (Chance(0.4))
        {
            recipe["potting"] = new JsonObject { ["kind"] = Pick("none", "wax", "lacquer", "epoxy") };
        }

        return recipe;
    }

    private JsonObject Coil(int number, double length, double width, double height)
    {
        JsonObject bobbin = new()
        {
            ["coreLength"] = Mm(length),
            ["coreWidth"] = Mm(width),
            ["windingHeight"] = Mm(height),
        };
        if (Chance(0.6))
        {
            bobbin["endRadius"] = Mm(width / 2 * _random.NextDouble());
        }

        if (Chance(0.6))
        {
            bobbin["maxBuild"] = Mm(Size(2, 12, 0.1, 50));
        }

        JsonObject coil = new()
        {
            ["name"] = "coil " + number.ToString(CultureInfo.InvariantCulture),
            ["bobbin"] = bobbin,
            ["wire"] = Wire(),
            ["winding"] = Winding(height),
        };
        if (Chance(0.85))
        {
            JsonArray poles = [Pole(length, width, height)];
            if (Chance(0.1))
            {
                poles.Add(Pole(length, width, height));
            }

            coil["poles"] = poles;
        }

        return coil;
    }

    private JsonObject Wire()
    {
        WireSize size = WireCatalogue.Standard.Sizes[_random.Next(WireCatalogue.Standard.Sizes.Count)];
        JsonObject wire = new()
        {
            ["gauge"] = _wild ? size.Gauge : Pick("AWG 42", "AWG 43", "AWG 41", "0.063 mm"),
            ["insulation"] = Pick("plain-enamel", "polyurethane"),
        };
        if (Chance(0.1))
        {
            double bare = Size(0.04, 0.1, 0.01, 0.5);
            wire["bareDiameter"] = Mm(bare);
            wire["overallDiameter"] = Mm(bare * Between(1.02, 1.4));
        }

        if (Chance(0.1))
        {
            wire["resistancePerLength"] = Text(Size(2, 10, 0.05, 250), "Ω/m");
        }

        return wire;
    }

    private JsonObject Winding(double height)
    {
        JsonObject winding = new()
        {
            ["turns"] = Math.Round(Size(3000, 12_000, 1, 100_000)),
            ["direction"] = Pick("clockwise", "counter-clockwise"),
            ["lay"] = Pick("scattered", "even"),
        };
        void Maybe(double chance, string name, Func<string> value)
        {
            if (Chance(chance))
            {
                winding[name] = value();
            }
        }

        Maybe(0.3, "pitch", () => Mm(Math.Min(height, Size(0.05, 0.3, 0.01, 5))));
        Maybe(0.3, "tension", () => Text(Size(8, 25, 0.6, 1000), "gf"));
        Maybe(0.1, "build", () => Mm(Size(2, 10, 0.1, 50)));
        Maybe(0.05, "capacitance", () => Text(Size(50, 200, 1, 10_000), "pF"));
        Maybe(0.05, "stretch", () => Text(Size(0.1, 2, 0.01, 20), "%"));
        return winding;
    }

    private JsonObject Pole(double length, double width, double height)
    {
        string shape = Pick("rod", "rod", "screw", "blade");
        bool inside = !Chance(0.1);
        double most = inside ? width : 100,
            thick = Math.Min(most, Size(2, 6, 0.5, 100));
        double tall = Size(height, height + 12, 0.5, 100);
        JsonObject pole = new()
        {
            ["shape"] = shape,
            ["length"] = Mm(tall),
            ["top"] = Mm(inside ? height / 2 + Size(0, 4, 0, 20) : Between(-100, 100)),
            ["magnetised"] = Pick("north-up", "south-up", "none"),
        };
        Material(pole, Chance(0.8) ? Pick(s_cores) : Pick(s_materials), polarised: true);
        if (shape == "blade")
        {
            pole["thickness"] = Mm(thick);
            pole["width"] = Mm(Math.Max(0.5, length * Between(0.2, 0.95)));
            return pole;
        }

        pole["diameter"] = Mm(thick);
        int count = Pick(1, 2, 4, 6, 6, 6, 7, _wild ? 36 : 8);
        double room = count > 1 ? (length - thick) / (count - 1) : 50;
        pole["count"] = count;
        pole["spacing"] = Mm(Math.Max(1, Math.Min(room, Math.Max(thick * 1.02, Size(8, 12, 1, 50)))));
        if (shape == "screw" && Chance(0.7))
        {
            pole["headDiameter"] = Mm(Math.Max(0.5, thick * Between(0.8, 2)));
            pole["headHeight"] = Mm(Math.Max(0.5, Math.Min(tall * 0.9, Size(0.8, 3, 0.5, 50))));
        }

        return pole;
    }

    private JsonArray Bars(int count, double length, double height, bool magnet)
    {
        JsonArray bars = [];
        double z = -height / 2 - Size(0, 12, 0, 60);
        for (int i = 0; i < count; i++)
        {
            double thick = Size(2, 6, 0.1, 60),
                wide = Size(3, 14, 0.1, 200),
                side = i % 2 == 0 ? 1 : -1;
            JsonObject bar = new()
            {
                ["shape"] = magnet ? "bar" : "keeper",
                ["size"] = new JsonArray(Mm(Size(0.8 * length, length, 0.1, 300)), Mm(wide), Mm(thick)),
                ["centre"] = new JsonArray(Mm(0), Mm(Chance(0.4) ? 0 : side * (wide / 2 + Size(1, 6, 0.01, 30))), Mm(z - thick / 2)),
            };
            Material(bar, Chance(0.8) ? Pick(s_cores) : Pick(s_materials), polarised: magnet);
            if (magnet)
            {
                bar["magnetised"] = Pick("x", "y", "-y", "z", "-z", "none");
            }

            bars.Add(bar);
        }

        return bars;
    }

    private JsonArray Metalwork(double length, double across, double height)
    {
        if (Chance(0.3))
        {
            return Bars(Pick(1, 2), length, height, magnet: false);
        }

        double thick = Size(0.2, 1.5, 0.05, 10),
            top = height / 2 + Size(1, 5, 0.1, 60);
        JsonObject sheet = new()
        {
            ["shape"] = Pick("cover", "plate"),
            ["thickness"] = Mm(thick),
            ["length"] = Mm(length + Size(12, 30, 1, 200)),
            ["width"] = Mm(2 * across + Size(2, 12, 1, 100)),
        };
        (double low, double high) =
            (string?)sheet["shape"] == "plate"
                ? (-height / 2 - top - thick, -height / 2 - top)
                : (-height / 2 - Between(0, 10), top + thick);
        (sheet["bottom"], sheet["top"]) = (Mm(low), Mm(high));
        if (Chance(0.5))
        {
            sheet["corner"] = Mm(Size(1, 6, 0, 50));
        }

        Material(sheet, Pick(s_sheets), polarised: false);
        return [sheet];
    }

    private void Material(JsonObject part, string name, bool polarised)
    {
        part["material"] = name;
        if (Chance(_wild ? 0.3 : 0.05))
        {
            part["relativePermeability"] = Size(1.01, 500, 1, 1e6);
        }

        if (Chance(_wild ? 0.3 : 0.05))
        {
            part["conductivity"] = Text(Size(1, 10, 0.001, 70), "MS/m");
        }

        if (polarised && Chance(_wild ? 0.2 : 0.03))
        {
            part["polarisation"] = Text(Size(0.1, 1.2, 0.001, 2.5), "T");
        }
    }

    /// <summary>Usual sizes evenly between two, or anything allowed evenly in its logarithm.</summary>
    private double Size(double from, double to, double least, double most)
    {
        if (!_wild || Chance(0.6))
        {
            return Between(from, to);
        }

        return least <= 0 ? most * Math.Pow(_random.NextDouble(), 3) : least * Math.Pow(most / least, _random.NextDouble());
    }

    private double Between(double from, double to) => from + (to - from) * _random.NextDouble();

    private bool Chance(double share) => _random.NextDouble() < share;

    private T Pick<T>(params ReadOnlySpan<T> of) => of[_random.Next(of.Length)];

    private static string Mm(double millimetres) => Text(millimetres, "mm");

    private static string Text(double value, string unit) =>
        value.ToString("G6", CultureInfo.InvariantCulture).Replace("E-05", "e-5", StringComparison.Ordinal) + " " + unit;
}
