using System.Text.Json;
using Coilwright.Papers.Words;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;

namespace Coilwright.Tests;

/// <summary>A person never reads a key of the file formats.</summary>
public sealed class KeyLabelTests
{
    private static readonly string[] s_quantities = ["dcResistance", "acResistance", "inductance", "q", "turns", "capacitance", "loadedPeak", "unloadedPeak", "poleField", "firstSwing", "charge", "chargeField", "wireResistance"];

    public static TheoryData<string> Keys =>
    [
        .. s_quantities.Concat(CausesOfTheFormat()).Concat(MaterialCatalogue.All.Select(material => material.Key))
            .Concat(WireCatalogue.Standard.Insulations.Select(enamel => enamel.Key)).Concat(["single", "heavy", "triple", "quad", "grade-1", "grade-2", "grade-3"]).Distinct(),
    ];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Every_key_has_a_label_in_plain_words(string key)
    {
        string label = KeyLabels.Of(key), figure = FigureWords.Name(key);
        Assert.All([label, figure], words =>
        {
            Assert.DoesNotContain('-', words);
            Assert.DoesNotMatch("[a-z]{2}[A-Z]", words);
        });
    }

    [Fact]
    public void Every_cause_of_the_format_has_a_label_of_its_own()
    {
        string[] labels = [.. CausesOfTheFormat().Select(KeyLabels.Of)];
        Assert.Equal(labels.Length, labels.Distinct(StringComparer.Ordinal).Count());
        Assert.DoesNotContain(labels, label => label is "broken coupled" or "meter error" or "miscount" or "coil bridged");
    }

    private static string[] CausesOfTheFormat()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(RepositoryFiles.PathOf("schemas", "judgement.json")));
        JsonElement piece = schema.RootElement.GetProperty("properties").GetProperty("pieces").GetProperty("items").GetProperty("properties");
        return [.. piece.GetProperty("causes").GetProperty("items").GetProperty("properties").GetProperty("cause").GetProperty("enum").EnumerateArray().Select(one => one.GetString()!)];
    }
}
