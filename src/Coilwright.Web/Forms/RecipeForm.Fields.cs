using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;

namespace Coilwright.Web.Forms;

/// <summary>The fields themselves, part by part.</summary>
public static partial class RecipeForm
{
    private static RecipeField[] Winding(string coil) =>
        [
            new($"{coil}.winding.turns", "Turns", "8000", [], true, new SliderRange(500, 15000, 10, "")),
            new($"{coil}.winding.direction", "Direction, from top", "", ["clockwise", "counter-clockwise"]),
            new($"{coil}.winding.lay", "Lay", "", ["scattered", "even"]),
            new($"{coil}.winding.pitch", "Pitch", "0.19 mm", []),
            new($"{coil}.winding.tension", "Tension", "14 gf", []),
            new($"{coil}.winding.speed", "Speed", "1200 rpm", []),
            new($"{coil}.winding.build", "Build, measured", "overrides the forecast", []),
            new($"{coil}.hot", "Hot end", "", ["start", "finish"]),
        ];

    private static RecipeField[] Wire(string coil) =>
        [
            new($"{coil}.wire.gauge", "Gauge", "AWG 42 or 0.063 mm", []),
            new($"{coil}.wire.insulation", "Insulation", "plain enamel", []),
            new($"{coil}.wire.build", "Film build", "", ["single", "heavy", "triple", "quad"]),
            new($"{coil}.wire.grade", "Grade, metric wire", "1 or 2", [], true),
            new($"{coil}.wire.overallDiameter", "Overall, measured", "2.6 thou", []),
            new($"{coil}.wire.resistancePerLength", "Ω per metre, measured", "5.54 Ω/m", []),
        ];

    private static RecipeField[] Bobbin(string coil) =>
        [
            new($"{coil}.bobbin.coreLength", "Core length", "64 mm", [], false, new SliderRange(20, 110, 0.5, " mm")),
            new($"{coil}.bobbin.coreWidth", "Core width", "6.2 mm ± 0.05 mm", [], false, new SliderRange(2, 40, 0.1, " mm")),
            new($"{coil}.bobbin.endRadius", "End radius", "half the width", []),
            new($"{coil}.bobbin.windingHeight", "Winding height", "11 mm", [], false, new SliderRange(3, 25, 0.1, " mm")),
            new($"{coil}.bobbin.maxBuild", "Most build", "4.3 mm", []),
            new($"{coil}.bobbin.fillLimit", "Our limit of fill", "0.74", [], true),
            new($"{coil}.bobbin.material", "Material", "vulcanised fibre", []),
            new($"{coil}.bobbin.wall", "Wall under the first turn", "up to the poles", []),
            new($"{coil}.bobbin.flange", "Flange", "a usual one", []),
            .. Making($"{coil}.bobbin"),
        ];

    /// <summary>What says how well a part's lengths are known that carry no ±.</summary>
    private static RecipeField[] Making(string part) =>
        [
            new($"{part}.made", "How it is made", "", ["moulded", "by-hand"]),
            new($"{part}.measured", "Measured by caliper", "yes or no", []),
        ];

    private static IEnumerable<FieldGroup> Poles(JsonNode document, string coil, string name)
    {
        int count = (JsonPath.Find(document, coil + ".poles") as JsonArray)?.Count ?? 0;
        for (int p = 0; p < count; p++)
        {
            string pole = string.Create(CultureInfo.InvariantCulture, $"{coil}.poles[{p}]");
            yield return new FieldGroup(
                name + "poles" + (count > 1 ? string.Create(CultureInfo.InvariantCulture, $" {p + 1}") : ""),
                [
                    new($"{pole}.shape", "Shape", "", ["rod", "screw", "blade"]),
                    new($"{pole}.material", "Material", "alnico 5", []),
                    new($"{pole}.diameter", "Diameter", "4.75 mm", []) { Only = "round" },
                    new($"{pole}.headDiameter", "Head diameter", "5 mm", []) { Only = "screw" },
                    new($"{pole}.headHeight", "Head height", "1.5 mm", []) { Only = "screw" },
                    new($"{pole}.thickness", "Thickness", "3 mm", []) { Only = "blade" },
                    new($"{pole}.width", "Width", "60 mm", []) { Only = "blade" },
                    new($"{pole}.length", "Length", "17 mm", []),
                    new($"{pole}.count", "Count", "6", [], true) { Only = "round" },
                    new($"{pole}.spacing", "Spacing", "10.4 mm", []) { Only = "round" },
                    new($"{pole}.top", "Top above the coil's middle", "9 mm", []),
                    new($"{pole}.magnetised", "Magnetised", "", ["north-up", "south-up", "none"]),
                    new($"{pole}.grounded", "Grounded", "yes or no", []),
                    .. Making(pole),
                ]
            )
            {
                TakeAway = PartsForm.TakingAway(coil + ".poles", p),
            };
        }
    }

    private static RecipeField[] Whole() =>
        [
            new("strings.count", "Strings", "6", [], true),
            new("strings.spacing", "String spacing", "10.4 mm", []),
            new("strings.clearance", "Clearance to the strings", "2.5 mm", []),
            new("connection", "Coils joined", "", ["single", "series", "parallel"]),
            new("potting.kind", "Potting", "wax", []),
        ];

    private static RecipeField[] Leads() =>
        [
            new(
                "leads.construction",
                "Leads",
                "",
                ["single-braided", "two-conductor-screened", "four-conductor-screened", "unscreened-pair"]
            ),
            new("leads.length", "Length of the leads", "0.3 m", []),
            new("leads.toScreen", "Capacitance to the screen", "120 pF/m", []),
            new("leads.between", "Capacitance between conductors", "60 pF/m", []),
        ];

    private static RecipeField[] Targets() =>
        [
            new("targets.dcResistance.nominal", "DC resistance at 20 °C", "6.2 kΩ", []),
            new("targets.dcResistance.tolerance", "± of it", "4 %", []),
            new("targets.inductance.nominal", "Inductance", "2.4 H", []),
            new("targets.inductance.tolerance", "± of inductance", "6 %", []),
            new("targets.inductance.at", "Inductance at", "1 kHz", []),
        ];

    /// <summary>Lists of parts whose fields differ by kind: whatever the document has, field by field.</summary>
    private static IEnumerable<FieldGroup> Rest(JsonNode document, string list)
    {
        JsonArray parts = document[list] as JsonArray ?? [];
        for (int i = 0; i < parts.Count; i++)
        {
            string path = string.Create(CultureInfo.InvariantCulture, $"{list}[{i}]");
            RecipeField[] making = Making(path);
            List<RecipeField> fields =
            [
                .. Leaves(parts[i], path)
                    .Where(leaf => !leaf.Path.EndsWith(".shape", StringComparison.Ordinal) && making.All(one => one.Path != leaf.Path)),
                .. making,
            ];
            yield return new FieldGroup(TitleOf(parts, i), fields) { TakeAway = PartsForm.TakingAway(list, i) };
        }
    }

    /// <summary>"bar magnet", "cover"; numbered where there are several of them.</summary>
    private static string TitleOf(JsonArray parts, int place)
    {
        string shape = parts[place]?["shape"]?.ToString() ?? "";
        string word = shape == "bar" ? "bar magnet" : KeyLabels.Of(shape);
        bool several = parts.Count(part => part?["shape"]?.ToString() == shape) > 1;
        return several ? string.Create(CultureInfo.InvariantCulture, $"{word} {place + 1}") : word;
    }

    private static IEnumerable<RecipeField> Leaves(JsonNode? node, string path) =>
        node switch
        {
            JsonObject fields => fields.SelectMany(field => Leaves(field.Value, $"{path}.{field.Key}")),
            JsonArray items => items.SelectMany((item, i) => Leaves(item, string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]"))),
            null => [],
            _ => [new RecipeField(path, LabelOf(path), "", [], node.GetValueKind() == JsonValueKind.Number)],
        };

    private static string LabelOf(string path) => FieldLabels.Of(path[(path.LastIndexOf('.') + 1)..]);
}
