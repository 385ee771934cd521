using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Interpretations;
using Coilwright.Workshop.Recipes.Parts;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Forms;

/// <summary>Which fields the recipe form shows for a document, and how a posted form goes back into it.</summary>
public static class RecipeForm
{
    private static readonly JsonSerializerOptions s_indented = new()
    {
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The four groups that a maker thinks in, each with its parts; the load stands with the strings.</summary>
    public static IReadOnlyList<RecipeGroup> SectionsOf(JsonNode document)
    {
        string[] coils = [.. Enumerable.Range(0, (document["coils"] as JsonArray)?.Count ?? 0).Select(CoilPath)];
        return
        [
            new("bobbin", "Bobbin", [.. coils.Select((coil, c) => BobbinOf(document, coil, c, coils.Length))])
            {
                Adding = [("Add a coil", PartsForm.Adding(RecipePart.Coil))],
            },
            new(
                "wire",
                "Wire and turns",
                [.. coils.Select(coil => new FieldGroup(NameOf(document, coil) + "wire and turns", [.. Winding(coil), .. Wire(coil)]))]
            ),
            new(
                "poles",
                "Poles and magnets",
                [
                    .. coils.SelectMany(coil => Poles(document, coil, NameOf(document, coil))),
                    .. Rest(document, "magnets"),
                    .. Rest(document, "metalwork"),
                ]
            )
            {
                Adding =
                [
                    .. coils.Select(
                        (coil, c) =>
                            (
                                "Add poles" + (coils.Length > 1 ? $" to {JsonPath.TextAt(document, coil + ".name")}" : ""),
                                PartsForm.Adding(RecipePart.Poles, c)
                            )
                    ),
                    ("Add a magnet", PartsForm.Adding(RecipePart.Magnet)),
                    ("Add a keeper", PartsForm.Adding(RecipePart.Keeper)),
                    ("Add a cover", PartsForm.Adding(RecipePart.Cover)),
                    ("Add a plate", PartsForm.Adding(RecipePart.Plate)),
                ],
            },
            new(
                "strings",
                "Strings and load",
                [
                    new FieldGroup("strings, joining and potting", Whole()),
                    new FieldGroup("load for the response", LoadForm.Fields),
                    new FieldGroup("leads", Leads()),
                    new FieldGroup("targets", Targets()),
                    .. Steps(document),
                ]
            )
            {
                Adding = [("Add a step of finishing", PartsForm.Adding(RecipePart.Step))],
            },
        ];
    }

    private static FieldGroup BobbinOf(JsonNode document, string coil, int place, int coils) =>
        coils == 1
            ? new FieldGroup("bobbin", Bobbin(coil))
            : new FieldGroup(
                NameOf(document, coil) + "bobbin",
                [
                    new($"{coil}.name", "Name of the coil", "", []),
                    .. Bobbin(coil),
                    new($"{coil}.position.y", "Place along the strings", "0 mm", []),
                ]
            )
            {
                TakeAway = PartsForm.TakingAway("coils", place),
            };

    /// <summary>Steps of its own; a recipe without any takes the usual ones.</summary>
    private static IEnumerable<FieldGroup> Steps(JsonNode document) =>
        Enumerable
            .Range(0, (document["steps"] as JsonArray)?.Count ?? 0)
            .Select(place =>
            {
                string step = string.Create(CultureInfo.InvariantCulture, $"steps[{place}]");
                return new FieldGroup(
                    $"step {place + 1}: {JsonPath.TextAt(document, step + ".name")}",
                    [
                        new($"{step}.name", "Name of the step", "inspection", []),
                        new($"{step}.least", "At least", "10 min", []),
                        new($"{step}.most", "At most", "1 h", []),
                        new($"{step}.hold", "Hold after it", "30 min", []),
                        new($"{step}.holdReason", "Why it holds", "wax sets", []),
                    ]
                )
                {
                    TakeAway = PartsForm.TakingAway("steps", place),
                };
            });

    /// <summary>The parts of a recipe's fields for a document, without those of the load.</summary>
    public static IReadOnlyList<FieldGroup> GroupsOf(JsonNode document) =>
        [.. SectionsOf(document).SelectMany(section => section.Parts).Where(part => !part.Fields.Any(LoadForm.Has))];

    private static string CoilPath(int coil) => string.Create(CultureInfo.InvariantCulture, $"coils[{coil}]");

    /// <summary>The coil's name before what is its own, where there are several.</summary>
    private static string NameOf(JsonNode document, string coil) =>
        (document["coils"] as JsonArray)?.Count > 1 ? JsonPath.TextAt(document, coil + ".name") + " coil: " : "";

    /// <summary>The document that a form is filled in on: the saved one, or that of a draft with other parts than it has.</summary>
    public static string PartsOf(string saved, IFormCollection form)
    {
        string typed = form["parts"].ToString();
        try
        {
            return typed.Length > 0 && JsonNode.Parse(typed) is JsonObject ? typed : saved;
        }
        catch (JsonException)
        {
            return saved;
        }
    }

    /// <summary>The document with the form's fields put in. Fields the form does not have stay as they were.</summary>
    public static string Apply(string json, IFormCollection form)
    {
        JsonNode document = JsonNode.Parse(json)!;
        foreach (RecipeField field in GroupsOf(document).SelectMany(group => group.Fields).Append(Name))
        {
            if (form.TryGetValue(field.Path, out StringValues typed) && typed.ToString().Trim() != TextAt(document, field.Path))
            {
                JsonPath.Set(document, field.Path, FormValue.NodeOf(field.Path, typed.ToString()));
            }
        }

        if (document["leads"] is JsonObject { Count: 0 })
        {
            document.AsObject().Remove("leads"); // every field of them was emptied
        }

        return document.ToJsonString(s_indented);
    }

    /// <summary>What the form shows for a path of the document: words where the document holds a key.</summary>
    public static string TextAt(JsonNode document, string path) => FieldInterpreter.Shown(path, JsonPath.TextAt(document, path));

    /// <summary>The field that names the recipe.</summary>
    public static RecipeField Name { get; } = new("name", "Name", "", []);

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
            new($"{coil}.bobbin.coreWidth", "Core width", "6.2 mm", [], false, new SliderRange(2, 40, 0.1, " mm")),
            new($"{coil}.bobbin.endRadius", "End radius", "half the width", []),
            new($"{coil}.bobbin.windingHeight", "Winding height", "11 mm", [], false, new SliderRange(3, 25, 0.1, " mm")),
            new($"{coil}.bobbin.maxBuild", "Most build", "4.3 mm", []),
            new($"{coil}.bobbin.fillLimit", "Our limit of fill", "0.74", [], true),
            new($"{coil}.bobbin.material", "Material", "vulcanised fibre", []),
            new($"{coil}.bobbin.wall", "Wall under the first turn", "up to the poles", []),
            new($"{coil}.bobbin.flange", "Flange", "a usual one", []),
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
            List<RecipeField> fields = [.. Leaves(parts[i], path).Where(leaf => !leaf.Path.EndsWith(".shape", StringComparison.Ordinal))];
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
