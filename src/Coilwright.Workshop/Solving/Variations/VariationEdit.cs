using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Solving.Variations;

/// <summary>Turns a recipe's document into a variant's and keeps account of what it touched; everything else stays as it stands.</summary>
internal sealed partial class VariationEdit
{
    /// <summary>Room between winding and cover, sheet thickness and drop below the coil: common practice, no source.</summary>
    private const double CoverRoomM = 0.8e-3,
        CoverSheetM = 0.4e-3,
        CoverOverPolesM = 0.2e-3;

    /// <summary>A usual bass: clearance and scale length. Common practice, no source.</summary>
    private const string BassClearance = "3 mm",
        BassScale = "864 mm";

    private static readonly JsonSerializerOptions s_written = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };
    private readonly Recipe _recipe;
    private readonly JsonObject _root;

    public VariationEdit(Recipe recipe) => (_recipe, _root) = (recipe, JsonNode.Parse(recipe.Json)!.AsObject());

    public string Json => _root.ToJsonString(s_written);

    /// <summary>What was changed, in words.</summary>
    public List<string> Parts { get; } = [];

    private IEnumerable<JsonObject> Coils => _root["coils"]!.AsArray().Select(coil => coil!.AsObject());
    private IEnumerable<JsonObject> Poles => Coils.SelectMany(coil => coil["poles"]?.AsArray() ?? []).Select(pole => pole!.AsObject());

    /// <summary>Strings and poles at another spacing; the core stays.</summary>
    public void Space(double spacingM)
    {
        string text = RecipeEdit.Millimetres(spacingM);
        double factor = _recipe.Strings is { } strings ? spacingM / strings.Spacing.Si : 1;
        if (_root["strings"] is JsonObject set)
        {
            set["spacing"] = text;
            Parts.Add($"strings {text} apart instead of {RecipeEdit.Millimetres(_recipe.Strings!.Spacing.Si)}");
        }

        foreach (JsonObject pole in Poles)
        {
            Respace(pole, text, factor);
        }

        Parts.Add("flatwork or former drilled anew; core and winding stay, so set-up, stop and ohms stay");
    }

    /// <summary>Longer former of every coil; sheets, bars and keepers along it grow as much.</summary>
    public void Lengthen(double byM)
    {
        foreach ((JsonObject coil, RecipeCoil read) in Coils.Zip(_recipe.Coils))
        {
            coil["bobbin"]!["coreLength"] = RecipeEdit.Changed(coil["bobbin"]!["coreLength"], read.Bobbin.CoreLength.Si + byM);
        }

        int along = 0;
        foreach (
            JsonObject part in (_root["magnets"]?.AsArray() ?? [])
                .Concat(_root["metalwork"]?.AsArray() ?? [])
                .Select(part => part!.AsObject())
        )
        {
            along += Longer(part, byM) ? 1 : 0;
        }

        double core = _recipe.Coils[0].Bobbin.CoreLength.Si;
        Parts.Add($"core {RecipeEdit.Millimetres(core + byM)} long instead of {RecipeEdit.Millimetres(core)}");
        if (along > 0)
        {
            Parts.Add($"bars, keepers and sheets along it {RecipeEdit.Millimetres(byM)} longer ({along})");
        }
    }

    /// <summary>Other number of strings and poles, core and what lies along it longer or shorter by the same.</summary>
    public void Strings(int count, double spacingM)
    {
        RecipeStrings old = _recipe.Strings!;
        double byM = (count - 1) * spacingM - (old.Count - 1) * old.Spacing.Si;
        if (Math.Abs(spacingM / old.Spacing.Si - 1) > 1e-9)
        {
            Space(spacingM);
            Parts.RemoveAt(Parts.Count - 1);
        }

        JsonObject set = _root["strings"]!.AsObject();
        set["count"] = count;
        Parts.Add($"{count} strings instead of {old.Count:0}");
        if (set.Remove("gauges"))
        {
            Parts.Add("the gauges of the strings are taken as usual for their number; state yours in the recipe");
        }

        foreach (
            JsonObject pole in Poles.Where(pole =>
                pole["count"] is JsonValue value && value.GetValue<double>() is var n && Math.Abs(n - old.Count) < 0.5
            )
        )
        {
            pole["count"] = count;
            pole.Remove("tops");
            pole["top"] ??= RecipeEdit.Millimetres(_recipe.Coils[0].Poles[0].TopsM.Max());
            Parts.Add($"{count} poles a coil");
        }

        Lengthen(byM);
    }

    /// <summary>Clearance and scale of a bass.</summary>
    public void AsBass()
    {
        JsonObject set = _root["strings"]!.AsObject();
        (set["clearance"], set["scaleLength"]) = (BassClearance, BassScale);
        Parts.Add($"clearance {BassClearance} and scale {BassScale} of a usual bass (common practice, no source)");
    }

    /// <summary>A closed cover around all coils.</summary>
    /// <param name="material">Name of a material.</param>
    /// <param name="model">The pickup.</param>
    /// <param name="buildsM">Build of each coil, m.</param>
    public void Cover(string material, PickupModel model, IReadOnlyList<double> buildsM)
    {
        (CoilModel Coil, double BuildM)[] coils = [.. model.Coils.Zip(buildsM)];
        const double around = CoverRoomM + CoverSheetM;
        string length = RecipeEdit.Millimetres(
            2 * (around + coils.Max(one => Math.Abs(one.Coil.Position.XM) + one.Coil.Bobbin.CoreLengthM / 2 + one.BuildM))
        );
        string width = RecipeEdit.Millimetres(
            2 * (around + coils.Max(one => Math.Abs(one.Coil.Position.YM) + one.Coil.Bobbin.CoreWidthM / 2 + one.BuildM))
        );
        JsonArray metalwork = _root["metalwork"] as JsonArray ?? [];
        _root["metalwork"] = metalwork;
        metalwork.Add(
            new JsonObject
            {
                ["shape"] = "cover",
                ["material"] = material,
                ["thickness"] = RecipeEdit.Millimetres(CoverSheetM),
                ["length"] = length,
                ["width"] = width,
                ["top"] = RecipeEdit.Millimetres(coils.Max(one => TopM(one.Coil)) + CoverOverPolesM + CoverSheetM),
                ["bottom"] = RecipeEdit.Millimetres(coils.Min(one => one.Coil.Position.ZM - one.Coil.Bobbin.WindingHeightM / 2)),
            }
        );
        Parts.Add(
            $"a cover of {KeyLabels.Of(material)}, {RecipeEdit.Millimetres(CoverSheetM)} thick, {length} × {width}, "
                + $"{RecipeEdit.Millimetres(CoverRoomM)} around the winding (common practice, no source; state yours in the recipe)"
        );
        Parts.Add("the cover is grounded, and the pickup potted with it: air under it squeals");
    }

    /// <summary>A label of the shop's: a tag "key: value", in place of one with the same key.</summary>
    public void Tag(string key, string value)
    {
        JsonArray tags = _root["tags"] as JsonArray ?? [];
        _root["tags"] = tags;
        foreach (
            JsonNode? old in tags.Where(tag =>
                    tag is JsonValue text
                    && text.TryGetValue(out string? found)
                    && found.StartsWith(key + ": ", StringComparison.OrdinalIgnoreCase)
                )
                .ToArray()
        )
        {
            tags.Remove(old);
        }

        tags.Add($"{key}: {value}");
    }

    /// <summary>Height of a coil's highest part: poles or winding.</summary>
    private static double TopM(CoilModel coil) =>
        coil.Position.ZM + Math.Max(coil.Bobbin.WindingHeightM / 2, coil.Poles.Count == 0 ? 0 : coil.Poles.Max(pole => pole.TopsM.Max()));

    private static void Respace(JsonObject pole, string spacing, double factor)
    {
        if (pole["spacing"] is not null)
        {
            pole["spacing"] = RecipeEdit.Changed(pole["spacing"], Metres(spacing));
        }
        else if (pole["positions"] is JsonArray positions)
        {
            pole["positions"] = new JsonArray([
                .. positions.Select(one => (JsonNode)RecipeEdit.Changed(one, factor * Metres(one!.GetValue<string>()))),
            ]);
        }
    }

    /// <summary>True when the part has a length along x.</summary>
    private static bool Longer(JsonObject part, double byM)
    {
        if (part["size"] is JsonArray size)
        {
            size[0] = RecipeEdit.Changed(size[0], Metres(size[0]!.GetValue<string>()) + byM);
            return true;
        }

        bool sheet = part["length"] is not null;
        if (sheet)
        {
            part["length"] = RecipeEdit.Changed(part["length"], Metres(part["length"]!.GetValue<string>()) + byM);
        }

        return sheet;
    }

    private static double Metres(string text) =>
        SizeParser.Read(text, Allowed.Place, unitRequired: true).Entered is { IsKnown: true } entered
            ? entered.Si
            : throw new InvalidOperationException($"\"{text}\" was read as a length before.");
}
