using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>A file that cannot be read is told in workshop words with line and place.</summary>
public sealed class BrokenFileTests
{
    [Theory]
    [InlineData("{\n \"name\": \"A\",\n}", "line 3, place 1", "comma too many")]
    [InlineData("{\n \"name\": \"A\"\n \"coils\": []\n}", "line 3, place 2", "comma is missing")]
    [InlineData("{ \"name\": 'A' }", "line 1, place 11", "straight double quotes")]
    [InlineData("{ \"name\": “A” }", "line 1, place 11", "straight double quotes")]
    [InlineData("{ \"ü\": x }", "line 1, place 8", "\"x\" does not belong here")]
    [InlineData("{ \"turns\": 8,000 }", "line 1, place 14", "")]
    [InlineData("{ // said\n}", "line 1, place 3", "notes")]
    [InlineData("{ \"coils\": [", "line 1", "ends too early")]
    [InlineData("{ \"name\": \"A", "line 1", "")]
    [InlineData("", "empty", "")]
    [InlineData("eight thousand turns", "line 1, place 1", "does not belong")]
    [InlineData("{} {}", "line 1, place 4", "")]
    public void The_place_and_the_probable_slip_are_named(string text, string place, string slip)
    {
        Problem problem = Assert.Single(RecipeReader.ReadFile(text).Problems);
        Assert.Contains(place, problem.Message, StringComparison.Ordinal);
        Assert.Contains(slip, problem.Message, StringComparison.Ordinal);
        Assert.All(s_foreign, word => Assert.DoesNotContain(word, problem.Message, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Whatever_is_cut_or_thrown_in_the_words_stay_ours() =>
        Gen.Select(Gen.Int[0, Whole.Length], Gen.Char["{}[]\",:'/\\x0-e\n\t“"])
            .Sample(
                (at, letter) =>
                {
                    foreach (string text in (string[])[Whole[..at], Whole.Insert(at, letter.ToString())])
                    {
                        foreach (Problem problem in RecipeReader.ReadFile(text).Problems)
                        {
                            Assert.All(s_foreign, word => Assert.DoesNotContain(word, problem.Message, StringComparison.OrdinalIgnoreCase));
                        }
                    }
                },
                iter: 2_000
            );

    [Fact]
    public void What_a_page_sends_is_answered_without_quotes_and_braces()
    {
        Problem problem = RecipeReader
            .Read(Whole.Replace("8000", "\"eight\"", StringComparison.Ordinal))
            .Problems.Single(one => one.Field == "coils[0].winding.turns");
        Assert.Equal("this is not a number", problem.Message);
        Assert.Equal("This is not a number. Understood: \"eight\". Allowed: 1 to 100000.", ProblemSentences.Write(problem));
    }

    [Fact]
    public void In_a_file_a_comma_is_refused_and_in_the_shop_it_is_still_read()
    {
        string comma = Whole.Replace("64 mm", "64,0 mm", StringComparison.Ordinal);
        Problem problem = RecipeReader.ReadFile(comma).Problems.Single(one => one.Field == "coils[0].bobbin.coreLength");
        Assert.Equal("in a file the point alone is the decimal sign; write \"64.0 mm\"", problem.Message);
        Assert.DoesNotContain(RecipeReader.Read(comma).Problems, one => one.Field == "coils[0].bobbin.coreLength");
    }

    private const string Whole = """
        {"format":"coilwright.recipe/1","name":"Pier","coils":[{"name":"main",
          "winding":{"turns":8000,"pitch":"0.19 mm"},"wire":{"gauge":"AWG 42"},
          "bobbin":{"coreLength":"64 mm","coreWidth":"6 mm","windingHeight":"11 mm"}}]}
        """;

    private static readonly string[] s_foreign =
    [
        "JSON",
        "Expected",
        "depth",
        "LineNumber",
        "BytePosition",
        "token",
        "literal",
        "property",
        "trailing",
        "escapable",
        "invalid",
    ];
}
