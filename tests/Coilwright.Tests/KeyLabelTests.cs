using System.Text.Json;
using Coilwright.Papers.Formatting;
using Coilwright.Physics.Materials;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;

namespace Coilwright.Tests;

/// <summary>A person never reads a key of the file formats.</summary>
public sealed class KeyLabelTests
{
    private static readonly string[] s_quantities =
    [
        "dcResistance",
        "acResistance",
        "inductance",
        "q",
        "turns",
        "capacitance",
        "loadedPeak",
        "unloadedPeak",
        "poleField",
        "firstSwing",
        "charge",
        "chargeField",
        "wireResistance",
    ];

    public static TheoryData<string> Keys =>
        [
            .. s_quantities
                .Concat(CausesOfTheFormat())
                .Concat(MaterialCatalogue.All.Select(material => material.Key))
                .Concat(WireCatalogue.Standard.Insulations.Select(enamel => enamel.Key))
                .Concat(["single", "heavy", "triple", "quad", "grade-1", "grade-2", "grade-3"])
                .Distinct(),
        ];

    [Theory]
    [MemberData(nameof(Keys))]
    public void Every_key_has_a_label_in_plain_words(string key)
    {
        string label = KeyLabels.Of(key),
            figure = FigureFormatter.Name(key);
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

    [Theory]
    [InlineData("the bath is over what abs bears", "the bath is over what abs bears")] // a word alone may be any
    [InlineData(
        "not one of the words known here; the nearest is \"alnico-5\"",
        "not one of the words known here; the nearest is \"alnico 5\""
    )]
    [InlineData("unloadedPeakGain, wireLength at 5.2 kHz of mV", "unloaded peak gain, wire length at 5.2 kHz of mV")]
    [InlineData("dcResistance, loadedPeak, coils[0].dcResistance", "DC resistance, loaded peak, coil 1, DC resistance")]
    [InlineData("coils[0].poles[1] and magnets[0] share room", "coil 1, pole 2 and magnet 1 share room")]
    [InlineData("set-up of H-12, counter-clockwise", "set-up of H-12, counter-clockwise")]
    public void A_sentence_is_told_without_keys(string sentence, string told) => Assert.Equal(told, KeyLabels.In(sentence));

    [Fact]
    public void A_file_is_mended_with_the_keys_that_it_holds()
    {
        Problem problem = new(
            "poles[0].material",
            "not one of the words known here; the nearest is \"alnico-5\"",
            Allowed: "alnico-5, low-carbon-steel"
        );
        Assert.Equal(
            "Not one of the words known here; the nearest is \"alnico 5\". Allowed: alnico 5, low carbon steel.",
            ProblemSentences.Write(problem)
        );
        Assert.Equal(
            "Not one of the words known here; the nearest is \"alnico-5\". Allowed: alnico-5, low-carbon-steel.",
            ProblemSentences.Write(problem, ofFile: true)
        );
    }

    [Theory]
    [InlineData("coils[1].winding.turns", "Coil 2, winding, turns")]
    [InlineData("targets.dcResistance.nominal", "Targets, DC resistance, nominal")]
    [InlineData("magnets[0].size[2]", "Magnet 1, size along z")]
    [InlineData("metalwork[0].centre[0]", "Metalwork 1, centre along x")]
    [InlineData("strings.scaleLength", "Strings, scale length")]
    [InlineData("", "")]
    public void A_path_is_told_in_words(string path, string words) => Assert.Equal(words, FieldLabels.Of(path));

    [Theory]
    [InlineData("loaded peak", "loadedPeak")]
    [InlineData("dc resistance", "dcResistance")]
    [InlineData("dcResistance", "dcResistance")]
    [InlineData("Coil 1, DC resistance", "coils[0].dcResistance")]
    [InlineData("moon", "moon")]
    public void A_key_is_typed_as_itself_or_as_its_words(string typed, string key) =>
        Assert.Equal(key, KeyLabels.KeyOf(typed, ["loadedPeak", "dcResistance", "coils[0].dcResistance"]));

    private static string[] CausesOfTheFormat()
    {
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(RepositoryFiles.PathOf("schemas", "judgement.json")));
        JsonElement piece = schema
            .RootElement.GetProperty("properties")
            .GetProperty("pieces")
            .GetProperty("items")
            .GetProperty("properties");
        return
        [
            .. piece
                .GetProperty("causes")
                .GetProperty("items")
                .GetProperty("properties")
                .GetProperty("cause")
                .GetProperty("enum")
                .EnumerateArray()
                .Select(one => one.GetString()!),
        ];
    }
}
