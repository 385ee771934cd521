using System.Text.RegularExpressions;

namespace Coilwright.Tests.Docs;

/// <summary>Keys of docs/sources.md: each is cited, each cited one exists, each standing is a defined one.</summary>
public sealed partial class SourceKeyTests
{
    private static readonly string[] s_text = [.. Lines("docs/sources.md")];
    private static readonly HashSet<string> s_keys =
    [
        .. s_text
            .Select(line => KeyRow().Match(line))
            .Where(row => row.Success)
            .Select(row => row.Groups[1].Value)
            .Except(["Key", "Setting"]),
    ];

    /// <summary>Units that stand in brackets like keys.</summary>
    private static readonly string[] s_units = ["Hz"];

    [Fact]
    public void Every_key_is_cited_beside_a_formula_a_table_or_a_check()
    {
        Assert.True(s_keys.Count > 50, $"only {s_keys.Count} keys were found");
        HashSet<string> cited = [.. Citations().Select(one => one.Key)];
        Assert.Empty(s_keys.Except(cited).Order());
    }

    [Fact]
    public void Every_cited_key_exists()
    {
        string[] unknown =
        [
            .. Citations().Where(one => !s_keys.Contains(one.Key)).Select(one => $"{one.File}: [{one.Key}]").Distinct().Order(),
        ];
        Assert.True(unknown.Length == 0, string.Join('\n', unknown));
    }

    [Fact]
    public void Every_standing_is_defined_at_the_head()
    {
        string[] defined =
        [
            .. s_text.Select(line => DefinedWord().Match(line)).Where(word => word.Success).Select(word => word.Groups[1].Value),
        ];
        Assert.All(Evidence.Standings, standing => Assert.Contains(standing, defined));
        foreach (
            string row in s_text.Where(line => KeyRow().Match(line) is { Success: true } match && s_keys.Contains(match.Groups[1].Value))
        )
        {
            string standing = row.Split('|')[^2].Trim();
            Assert.True(defined.Any(word => standing.StartsWith(word, StringComparison.Ordinal)), row);
        }
    }

    [Theory] // the guard itself: what counts as a citation and what does not
    [InlineData("/// of the standard [IEC60028] and", "IEC60028")]
    [InlineData("[Fact] // by [GUM], §5", "GUM")]
    [InlineData("Call(\"from a table [Gap]\");", "Gap")]
    [InlineData("// both [GUM, SI]", "GUM SI")]
    [InlineData("[Theory]", "")]
    [InlineData("see [GUM](https://example.invalid)", "")]
    public void A_citation_is_a_key_in_a_comment_or_in_words(string line, string key) =>
        Assert.Equal(key, string.Join(' ', CitedIn(".cs", line)));

    /// <summary>
    /// Keys in brackets: in code only in comments and in quoted words, in tables and documents anywhere but as the text of a link.
    /// </summary>
    private static IEnumerable<(string File, string Key)> Citations()
    {
        foreach (string folder in (string[])["src", "tests", "docs"])
        {
            foreach (string file in RepositoryFiles.Written(folder, ".cs", ".csv", ".md", ".razor").Where(IsAsked))
            {
                foreach (string key in File.ReadLines(file).SelectMany(line => CitedIn(Path.GetExtension(file), line)))
                {
                    yield return (Path.GetRelativePath(RepositoryFiles.Root, file), key);
                }
            }
        }
    }

    private static bool IsAsked(string path) => Path.GetFileName(path) is not ("sources.md" or "evidence.md" or "SourceKeyTests.cs");

    private static IEnumerable<string> CitedIn(string kind, string line)
    {
        string words = kind is ".cs" or ".razor" ? string.Join(' ', Spoken().Matches(line).Select(match => match.Value)) : line;
        return Citation().Matches(words).SelectMany(match => match.Groups[1].Value.Split(", ")).Except(s_units);
    }

    private static IEnumerable<string> Lines(string path) => File.ReadLines(RepositoryFiles.PathOf(path.Split('/')));

    [GeneratedRegex(@"^\| ([A-Z][A-Za-z0-9]+) \|")]
    private static partial Regex KeyRow();

    [GeneratedRegex(@"^- \*\*([a-z -]+?)(, no source)?\*\*:")]
    private static partial Regex DefinedWord();

    [GeneratedRegex(@"//.*$|""(?:[^""\\]|\\.)*""")]
    private static partial Regex Spoken();

    [GeneratedRegex(@"\[([A-Z][A-Za-z0-9]+(?:, [A-Z][A-Za-z0-9]+)*)\](?![(\w])")]
    private static partial Regex Citation();
}
