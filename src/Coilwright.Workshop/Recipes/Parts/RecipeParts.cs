using System.Globalization;
using System.Text.Json.Nodes;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Parts;

/// <summary>Parts are added to a recipe with common-practice values that fit it, and taken away; nothing is saved by it.</summary>
public static class RecipeParts
{
    /// <summary>The recipe with one part more.</summary>
    /// <param name="json">The recipe.</param>
    /// <param name="part">What is added.</param>
    /// <param name="coil">Which coil gets it, from 0; of poles alone.</param>
    public static (string Json, IReadOnlyList<Problem> Problems) Add(string json, RecipePart part, int coil)
    {
        if (RecipeReader.Read(json) is not { Ok: true, Value: { } recipe })
        {
            return (json, [new Problem("", $"a {part.Word} is fitted to the recipe as it stands: mend its mistakes first")]);
        }

        JsonObject root = JsonNode.Parse(json)!.AsObject();
        if (coil < 0 || coil >= recipe.Coils.Count)
        {
            return (json, [new Problem("", "this recipe has no such coil")]);
        }

        JsonObject holder = part == RecipePart.Poles ? root["coils"]![coil]!.AsObject() : root;
        JsonArray list = holder[part.List] as JsonArray ?? [];
        holder[part.List] = list;
        if (list.Count >= part.Most)
        {
            return (json, [new Problem("", $"no room for another {part.Word}", Allowed: $"at most {part.Most}")]);
        }

        if (part == RecipePart.Cover)
        {
            return (CommonParts.WithCover(recipe), []);
        }

        CommonParts.Append(list, part, recipe, coil);
        if (part == RecipePart.Coil && root["connection"]?.ToString() is null or "single")
        {
            root["connection"] = "series";
        }

        return (root.ToJsonString(CommonParts.Written), []);
    }

    /// <summary>The recipe without one of its parts.</summary>
    /// <param name="json">The recipe.</param>
    /// <param name="list">Path of the list that the part stands in, for example "coils[0].poles".</param>
    /// <param name="place">Which of them, from 0.</param>
    public static (string Json, IReadOnlyList<Problem> Problems) TakeAway(string json, string list, int place)
    {
        JsonObject root = JsonNode.Parse(json)!.AsObject();
        if (Find(root, list) is not { } parts || place < 0 || place >= parts.Count)
        {
            return (json, [new Problem("", "this part stands no more in the recipe")]);
        }

        if (list == RecipePart.Coil.List && parts.Count == 1)
        {
            return (json, [new Problem("coils", "a pickup has at least one coil: this is its last", Allowed: "1 to 12")]);
        }

        parts.RemoveAt(place);
        if (list == RecipePart.Coil.List && parts.Count == 1)
        {
            root["connection"] = "single";
        }

        return (root.ToJsonString(CommonParts.Written), []);
    }

    /// <summary>What one recipe has more or less of than another, in words; empty when it has as many of each.</summary>
    public static string Difference(JsonNode before, JsonNode after)
    {
        (string One, string Many, int More)[] changes =
        [
            ("coil", "coils", Count(after["coils"]) - Count(before["coils"])),
            ("row of poles", "rows of poles", PolesOf(after) - PolesOf(before)),
            ("bar magnet", "bar magnets", Count(after["magnets"]) - Count(before["magnets"])),
            ("piece of metalwork", "pieces of metalwork", Count(after["metalwork"]) - Count(before["metalwork"])),
            ("step", "steps", Count(after["steps"]) - Count(before["steps"])),
        ];
        return string.Join("; ", changes.Where(change => change.More != 0).Select(Tell));
    }

    private static string Tell((string One, string Many, int More) change)
    {
        int count = Math.Abs(change.More);
        string done = change.More > 0 ? "added" : "taken away";
        return string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? change.One : change.Many)} {done}");
    }

    private static int Count(JsonNode? list) => (list as JsonArray)?.Count ?? 0;

    private static int PolesOf(JsonNode recipe) => (recipe["coils"] as JsonArray ?? []).Sum(coil => Count(coil?["poles"]));

    /// <summary>The lists that parts stand in, and no others.</summary>
    private static JsonArray? Find(JsonObject root, string list)
    {
        JsonArray coils = root["coils"] as JsonArray ?? [];
        for (int coil = 0; coil < coils.Count; coil++)
        {
            if (list == string.Create(CultureInfo.InvariantCulture, $"coils[{coil}].poles"))
            {
                return coils[coil]?["poles"] as JsonArray;
            }
        }

        return RecipePart.All.Any(part => part.List == list && part != RecipePart.Poles) ? root[list] as JsonArray : null;
    }
}
