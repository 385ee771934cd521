using System.Text.Json.Nodes;
using Coilwright.Web.Forms;

namespace Coilwright.Web.Tests;

/// <summary>A form field's name is a path in the document; nothing else in the document may move.</summary>
public sealed class JsonPathTests
{
    private const string Document = """{"name":"x","coils":[{"winding":{"turns":8000}}],"notes":{"mine":[1,2]}}""";

    [Theory]
    [InlineData("name", "x")]
    [InlineData("coils[0].winding.turns", "8000")]
    [InlineData("notes.mine[1]", "2")]
    [InlineData("coils[3].winding.turns", "")]
    [InlineData("no.such.thing", "")]
    public void Text_at_a_path_is_what_the_form_shows(string path, string expected) =>
        Assert.Equal(expected, JsonPath.TextAt(JsonNode.Parse(Document), path));

    [Fact]
    public void Setting_makes_missing_objects_and_leaves_the_rest_alone()
    {
        JsonNode document = JsonNode.Parse(Document)!;
        JsonPath.Set(document, "targets.dcResistance.nominal", JsonValue.Create("6.2 kΩ"));
        JsonPath.Set(document, "coils[0].winding.turns", JsonValue.Create(8050));
        Assert.Equal("6.2 kΩ", JsonPath.TextAt(document, "targets.dcResistance.nominal"));
        Assert.Equal("8050", JsonPath.TextAt(document, "coils[0].winding.turns"));
        Assert.Equal("[1,2]", document["notes"]!["mine"]!.ToJsonString());
    }

    [Fact]
    public void Setting_nothing_takes_the_field_away_and_makes_no_objects()
    {
        JsonNode document = JsonNode.Parse(Document)!;
        JsonPath.Set(document, "coils[0].winding.turns", null);
        JsonPath.Set(document, "targets.dcResistance.nominal", null);
        Assert.Equal("""{"name":"x","coils":[{"winding":{}}],"notes":{"mine":[1,2]}}""", document.ToJsonString());
    }

    [Fact]
    public void Whatever_is_set_is_read_back() =>
        Gen.Select(Gen.Int[0, 1], Gen.String[Gen.Char.AlphaNumeric, 1, 12], Gen.String[Gen.Char.AlphaNumeric, 0, 12])
            .ForAll(
                (index, name, value) =>
                {
                    JsonNode document = JsonNode.Parse("""{"list":[{},{}]}""")!;
                    string path = $"list[{index}].{name}";
                    JsonPath.Set(document, path, JsonValue.Create(value));
                    return JsonPath.TextAt(document, path) == value && ((JsonObject)document["list"]![1 - index]!).Count == 0;
                }
            );
}
