using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coilwright.Analysis.Originals;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Originals;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Originals;

/// <summary>Reads an original to identify (format coilwright.original/1) and tells every mistake at once.</summary>
/// <remarks>Whatever a recipe can hold may be told of it; bobbin, wire, winding and poles of a single coil may stand at the top.</remarks>
public static partial class OriginalReader
{
    public const string Format = "coilwright.original/1";
    private const string UnknownGauge = "AWG 42";
    private const int UnknownTurns = 7000;
    private static readonly string[] s_ofCoil = ["bobbin", "wire", "winding", "poles"];
    private static readonly string[] s_ofRecipe = ["strings", "magnets", "metalwork", "connection", "potting"];

    /// <summary>The original of a file that was handed in, or every problem: the point alone is decimal there.</summary>
    public static ReadOutcome<Original> Read(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    private static Original Whole(JsonFields fields)
    {
        string name = fields.Text("name");
        fields.Free("notes", "tags");
        List<OriginalReading> readings =
        [
            .. fields
                .Objects(
                    "readings",
                    one => new Told(ReadingReader.Read(one)),
                    100,
                    "[ { \"quantity\": \"dcResistance\", \"value\": \"5.76 kΩ\" } ]"
                )
                .Select(told => told?.Reading)
                .OfType<OriginalReading>(),
        ];
        if (fields.Own("readings") is { ValueKind: JsonValueKind.Array } list && list.GetArrayLength() == 0)
        {
            fields.Problems.Add(
                "readings",
                "nothing was read: an original is found from its readings",
                "[]",
                "1 reading or more, for example dcResistance"
            );
        }

        Template template = new(fields);
        ReadOutcome<Recipe> known = RecipeReader.ReadFile(template.Recipe(name));
        foreach (Problem problem in known.Problems)
        {
            fields.Problems.Add(template.PathOf(problem.Field), problem.Message, problem.Understood, problem.Allowed);
        }

        readings.AddRange(template.Turns);
        return new Original(name, known.Value!, readings, template.Gauge, template.Build, template.PolesUnknown);
    }

    private sealed record Told(OriginalReading? Reading);

    /// <summary>Takes what is told and fills what is not with placeholders, so that one reader judges both.</summary>
    private sealed partial class Template
    {
        private readonly JsonObject _recipe = new() { ["format"] = RecipeReader.Format };
        private readonly bool _single;

        public Template(JsonFields fields)
        {
            _single = !fields.Has("coils");
            JsonArray coils = fields.Own("coils") is { ValueKind: JsonValueKind.Array } list
                ? (JsonArray)JsonCopy.Of(list, "coils", fields.Problems)!
                : [Single(fields)];
            for (int c = 0; c < coils.Count; c++)
            {
                if (coils[c] is JsonObject coil)
                {
                    coil["name"] ??= c == 0 ? "main" : $"coil {c + 1}";
                    Complete(coil);
                    Measured([coil["bobbin"], .. coil["poles"] as JsonArray ?? []]);
                }
            }

            _recipe["coils"] = coils;
            foreach (string part in s_ofRecipe)
            {
                if (fields.Own(part) is { } value)
                {
                    _recipe[part] = JsonCopy.Of(value, part, fields.Problems);
                }
            }

            Measured([.. _recipe["magnets"] as JsonArray ?? [], .. _recipe["metalwork"] as JsonArray ?? []]);
        }

        public string? Gauge { get; private set; }
        public string? Build { get; private set; }
        public bool PolesUnknown { get; private set; }

        /// <summary>The count, where it is told: as good as a reading to 1 %.</summary>
        public List<OriginalReading> Turns { get; } = [];

        public string Recipe(string name)
        {
            _recipe["name"] = name.Length > 0 ? name : "original";
            return _recipe.ToJsonString();
        }

        /// <summary>Where a problem of the recipe stands in the original.</summary>
        public string PathOf(string field) => _single ? TopCoil().Replace(field, "") : field;

        /// <summary>What is told of an original was measured on it, unless that is denied.</summary>
        private static void Measured(IEnumerable<JsonNode?> parts)
        {
            foreach (JsonObject part in parts.OfType<JsonObject>())
            {
                part["measured"] ??= true;
            }
        }

        private static JsonObject Single(JsonFields fields)
        {
            JsonObject coil = [];
            foreach (string part in s_ofCoil)
            {
                if (fields.Own(part) is { } value)
                {
                    coil[part] = JsonCopy.Of(value, part, fields.Problems);
                }
            }

            return coil;
        }

        private void Complete(JsonObject coil)
        {
            JsonObject wire = coil["wire"] as JsonObject ?? [];
            Gauge ??=
                wire["gauge"] is JsonValue gauge && gauge.TryGetValue(out string? told) ? WireCatalogue.Standard.Find(told)?.Gauge : null;
            Build ??= (wire["build"] ?? wire["grade"])?.ToString() switch
            {
                null or "" => null,
                { Length: 1 } grade => "grade-" + grade,
                var build => build,
            };
            if (coil["wire"] is null or JsonObject)
            {
                wire["gauge"] ??= UnknownGauge;
                coil["wire"] = wire.Parent is null ? wire : wire.DeepClone();
            }

            JsonObject winding = coil["winding"] as JsonObject ?? [];
            if (coil["winding"] is null or JsonObject)
            {
                if (winding["turns"] is JsonValue turns && turns.TryGetValue(out double count) && count > 0 && Turns.Count == 0)
                {
                    Turns.Add(new OriginalReading(OriginalQuantity.Turns, count, 0.01));
                }

                winding["turns"] ??= UnknownTurns;
                coil["winding"] = winding.Parent is null ? winding : winding.DeepClone();
            }

            foreach (JsonObject pole in (coil["poles"] as JsonArray ?? []).OfType<JsonObject>().Where(pole => pole["material"] is null))
            {
                PolesUnknown = true;
                pole["material"] = OriginalCandidates.UnknownPole;
            }
        }

        [GeneratedRegex(@"^coils\[0\]\.")]
        private static partial Regex TopCoil();
    }
}
