using Coilwright.Analysis.Originals;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Originals;

/// <summary>Reads an original to identify (format coilwright.original/1) and tells every mistake at once.</summary>
/// <remarks>What is known of its parts is written as in a recipe and read by the recipe's own reader, with what is not known filled in for the time being.</remarks>
public static class OriginalReader
{
    public const string Format = "coilwright.original/1";

    private static readonly string[] s_parts = ["coils", "magnets", "metalwork", "strings", "connection", "potting"];
    private static readonly string[] s_single = ["bobbin", "wire", "winding", "poles"];

    /// <summary>The question to ask, or every problem.</summary>
    public static ReadOutcome<Original> Read(string json) => JsonText.Read(json, Format, Whole);

    private static Original Whole(JsonFields fields)
    {
        fields.Free("notes", "tags");
        string name = fields.Text("name");
        JsonObject recipe = new() { ["format"] = RecipeReader.Format, ["name"] = name.Length > 0 ? name : "an original" };
        foreach (string part in s_parts)
        {
            if (fields.Own(part) is { } value)
            {
                recipe[part] = JsonNode.Parse(value.GetRawText());
            }
        }

        Dictionary<string, JsonElement?> single = s_single.ToDictionary(part => part, part => fields.Own(part));
        bool short1 = recipe["coils"] is null;
        if (short1)
        {
            JsonObject coil = new() { ["name"] = "coil" };
            foreach ((string part, JsonElement? value) in single)
            {
                coil[part] = value is { } given ? JsonNode.Parse(given.GetRawText()) : null;
            }

            recipe["coils"] = new JsonArray(Known(coil));
        }
        else
        {
            foreach (string part in s_single.Where(part => single[part] is not null))
            {
                fields.Problems.Add(part, "give this inside each of the coils, or leave coils out");
            }
        }

        bool wireKnown = false, turnsKnown = false, coresKnown = true;
        foreach (JsonObject coil in (recipe["coils"] as JsonArray ?? []).OfType<JsonObject>())
        {
            FillIn(coil, ref wireKnown, ref turnsKnown, ref coresKnown);
        }

        ReadOutcome<Recipe> read = RecipeReader.Read(recipe.ToJsonString());
        foreach (Problem problem in read.Problems)
        {
            string field = short1 ? problem.Field.Replace("coils[0].", "", StringComparison.Ordinal) : problem.Field;
            fields.Problems.Add(field, problem.Message, problem.Understood, problem.Allowed);
        }

        IReadOnlyList<OriginalReading> readings = fields.Objects("readings", ReadingReader.Read, 64, "[ { \"quantity\": \"dcResistance\", … } ]");
        if (fields.Has("readings") && readings.Count == 0)
        {
            fields.Problems.Add("readings", "at least one reading is needed", "[]", "1 to 64 readings");
        }

        return new Original(name, read.Value!, readings, wireKnown, turnsKnown, coresKnown);
    }

    private static JsonObject Known(JsonObject coil)
    {
        foreach (string gone in coil.Where(pair => pair.Value is null).Select(pair => pair.Key).ToArray())
        {
            coil.Remove(gone);
        }

        return coil;
    }

    /// <summary>Wire, turns and cores that are not known stand for the time being as something usual.</summary>
    private static void FillIn(JsonObject coil, ref bool wireKnown, ref bool turnsKnown, ref bool coresKnown)
    {
        JsonObject wire = coil["wire"] as JsonObject ?? [];
        wireKnown |= wire.ContainsKey("gauge");
        if (!wire.ContainsKey("gauge") && !wire.ContainsKey("bareDiameter"))
        {
            wire["gauge"] = "AWG 42";
        }

        JsonObject winding = coil["winding"] as JsonObject ?? [];
        turnsKnown |= winding.ContainsKey("turns");
        if (!winding.ContainsKey("turns"))
        {
            winding["turns"] = 6000;
        }

        if (coil["wire"] is null or JsonObject)
        {
            coil["wire"] = wire.Parent is null ? wire : coil["wire"]!.DeepClone();
        }

        if (coil["winding"] is null or JsonObject)
        {
            coil["winding"] = winding.Parent is null ? winding : coil["winding"]!.DeepClone();
        }

        foreach (JsonObject pole in (coil["poles"] as JsonArray ?? []).OfType<JsonObject>().Where(pole => !pole.ContainsKey("material")))
        {
            pole["material"] = CoreGuess.Placeholder;
            pole["notes"] = CoreGuess.Mark;
            coresKnown = false;
        }
    }
}

/// <summary>An original as it was described.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Recipe">What is known, with placeholders.</param>
/// <param name="Readings">What was read.</param>
/// <param name="WireKnown">True when the gauge was given.</param>
/// <param name="TurnsKnown">True when the turns were given.</param>
/// <param name="CoresKnown">False when a pole's material was left out.</param>
public sealed record Original(string Name, Recipe Recipe, IReadOnlyList<OriginalReading> Readings, bool WireKnown, bool TurnsKnown, bool CoresKnown);
