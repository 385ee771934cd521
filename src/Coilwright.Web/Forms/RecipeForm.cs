using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Interpretations;
using Coilwright.Workshop.Recipes.Parts;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Forms;

/// <summary>Which fields the recipe form shows for a document, and how a posted form goes back into it.</summary>
public static partial class RecipeForm
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
}
