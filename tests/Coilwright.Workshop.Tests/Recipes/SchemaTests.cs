using System.Text.Json;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Json.Schema;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>The published schemas agree with what the readers accept.</summary>
public class SchemaTests
{
    private static readonly Dictionary<string, JsonSchema> s_schemas = LoadAll();

    private static readonly string[] s_written = ["mm", "kΩ", "H", "pF", "°C", "Hz", "gf", "rpm", "%", "MS/m", "T", "pF/m", "Ω/m", "min"];

    [Theory]
    [MemberData(nameof(DemoFiles.Recipes), MemberType = typeof(DemoFiles))]
    public void Demo_recipes_satisfy_the_recipe_schema(string name) => Satisfies("recipe", DemoFiles.Recipe(name));

    [Theory]
    [MemberData(nameof(DemoFiles.Loads), MemberType = typeof(DemoFiles))]
    public void Demo_loads_satisfy_the_load_schema(string name) => Satisfies("load", DemoFiles.Load(name));

    [Fact]
    public void A_lumped_pickup_satisfies_its_schema() =>
        Satisfies(
            "lumped",
            """{ "format": "coilwright.lumped/1", "resistance": "7k8", "inductance": "4.4 H", "capacitance": "120 pF", "eddy": [ """
                + """{ "inductance": "0.9 H", "resistance": "60 kΩ" } ], "parallelLoss": "1 MΩ" }"""
        );

    [Theory]
    [InlineData("\"turns\": 8000", "\"turns\": 8000, \"turn\": 8000")]
    [InlineData("\"turns\": 8000", "\"turns\": \"8000\"")]
    [InlineData("\"windingHeight\": \"11 mm\"", "\"windingHeight\": 11")]
    [InlineData("\"windingHeight\": \"11 mm\"", "\"windingHeight\": \"11\"")]
    [InlineData("\"windingHeight\": \"11 mm\"", "\"windingHeight\": \"11 kΩ\"")]
    [InlineData("\"windingHeight\": \"11 mm\", ", "")]
    [InlineData("coilwright.recipe/1", "coilwright.recipe/9")]
    [InlineData("\"clockwise", "\"clokwise")]
    [InlineData("\"counter-clockwise\"", "\"anticlockwise\"")]
    [InlineData("\"top\": \"9 mm\", ", "")]
    public void What_the_reader_refuses_the_schema_refuses_too(string right, string wrong)
    {
        string json = DemoFiles.Recipe("harbour-bridge").Replace(right, wrong, StringComparison.Ordinal);
        if (json == DemoFiles.Recipe("harbour-bridge"))
        {
            json = DemoFiles.Recipe("sandbar-wide").Replace(right, wrong, StringComparison.Ordinal);
        }

        Assert.False(RecipeReader.Read(json).Ok);
        using JsonDocument document = JsonDocument.Parse(json);
        Assert.False(s_schemas["recipe"].Evaluate(document.RootElement).IsValid);
    }

    /// <summary>Whatever the program writes as text passes the pattern of its kind.</summary>
    [Theory]
    [InlineData(QuantityKind.Length, "length")]
    [InlineData(QuantityKind.Resistance, "resistance")]
    [InlineData(QuantityKind.Inductance, "inductance")]
    [InlineData(QuantityKind.Capacitance, "capacitance")]
    [InlineData(QuantityKind.Temperature, "temperature")]
    [InlineData(QuantityKind.Frequency, "frequency")]
    [InlineData(QuantityKind.Force, "force")]
    [InlineData(QuantityKind.Speed, "speed")]
    [InlineData(QuantityKind.Fraction, "fraction")]
    [InlineData(QuantityKind.Conductivity, "conductivity")]
    [InlineData(QuantityKind.FluxDensity, "fluxDensity")]
    [InlineData(QuantityKind.CapacitancePerLength, "capacitancePerLength")]
    [InlineData(QuantityKind.ResistancePerLength, "resistancePerLength")]
    [InlineData(QuantityKind.Duration, "duration")]
    public void Written_quantities_pass_the_pattern_of_their_kind_and_no_other_units_do(QuantityKind kind, string name)
    {
        using JsonDocument quantities = JsonDocument.Parse(File.ReadAllText(Path.Combine(DemoFiles.Root, "schemas", "quantity.json")));
        string pattern = quantities.RootElement.GetProperty("$defs").GetProperty(name).GetProperty("pattern").GetString()!;
        Gen.Select(Gen.Double[1, 10], Gen.Int[-9, 6])
            .ForAll((mantissa, power) => Assert.Matches(pattern, QuantityParser.Format(mantissa * Math.Pow(10, power), kind)), count: 500);
        foreach (string unit in s_written)
        {
            bool read = QuantityParser.TryParse("3 " + unit, kind, unitRequired: true, out _, out _);
            Assert.True(read == System.Text.RegularExpressions.Regex.IsMatch("3 " + unit, pattern), $"3 {unit} as {name}: read {read}");
        }
    }

    private static void Satisfies(string schema, string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        EvaluationResults results = s_schemas[schema]
            .Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        IEnumerable<string> errors = (results.Details ?? [])
            .Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"));
        Assert.True(results.IsValid, string.Join("\n", errors));
    }

    private static Dictionary<string, JsonSchema> LoadAll()
    {
        BuildOptions options = new() { SchemaRegistry = new SchemaRegistry() };
        string[] files = Directory.GetFiles(Path.Combine(DemoFiles.Root, "schemas"), "*.json");
        return files
            .OrderBy(file => !file.EndsWith("quantity.json", StringComparison.Ordinal))
            .ToDictionary(file => Path.GetFileNameWithoutExtension(file), file => JsonSchema.FromFile(file, options));
    }
}
