using System.Text.RegularExpressions;

namespace Coilwright.Tests.Docs;

/// <summary>
/// Figures that docs/theory.md quotes from docs/evidence.md stand there: written as a link to evidence.md#row, whose columns hold the
/// figure.
/// </summary>
public sealed partial class TheoryFiguresTests
{
    private static readonly Dictionary<string, string> s_rows = File.ReadLines(RepositoryFiles.PathOf("docs", "evidence.md"))
        .Select(line => Row().Match(line))
        .Where(row => row.Success)
        .ToDictionary(row => row.Groups[1].Value, row => row.Groups[2].Value);

    [Fact]
    public void Every_figure_quoted_is_the_one_recorded()
    {
        MatchCollection quotes = Quote().Matches(File.ReadAllText(RepositoryFiles.PathOf("docs", "theory.md")));
        Assert.True(quotes.Count >= 20, $"only {quotes.Count} figures are quoted");
        Assert.Empty(
            quotes
                .Where(quote => !Stands(quote.Groups[1].Value, quote.Groups[2].Value))
                .Select(quote => $"{quote.Value}: docs/evidence.md has {s_rows.GetValueOrDefault(quote.Groups[2].Value, "no such row")}")
        );
    }

    /// <summary>What the table names are files that are there, so that a row leads somewhere.</summary>
    [Fact]
    public void Every_file_named_in_the_table_is_there()
    {
        string[] rows = File.ReadAllLines(RepositoryFiles.PathOf("docs", "theory.md"));
        string[] files = [.. rows.Where(row => row.StartsWith("| ", StringComparison.Ordinal)).SelectMany(FilesIn).Distinct()];
        Assert.True(files.Length > 60, $"only {files.Length} files are named");
        Assert.All(files, file => Assert.True(Exists(file), file));
    }

    private static bool Stands(string figure, string row) => s_rows.TryGetValue(row, out string? cells) && Whole(figure).IsMatch(cells);

    /// <summary>The figure as a whole: no digit, point or sign before it and no digit after it.</summary>
    private static Regex Whole(string figure) => new(@"(?<![\d.+-])" + Regex.Escape(figure.Replace('−', '-')) + @"(?!\d)");

    private static IEnumerable<string> FilesIn(string row) => FileName().Matches(row).Select(match => match.Groups[1].Value);

    private static bool Exists(string file)
    {
        string[] homes = file.StartsWith("tests/", StringComparison.Ordinal)
            ? [file]
            : [$"src/Coilwright.{file}", $"tests/Coilwright.{file}.cs"];
        return homes.Any(home => File.Exists(RepositoryFiles.PathOf(home.Split('/'))));
    }

    [GeneratedRegex("^\\| <a id=\"([^\"]+)\"></a>[^|]*(\\|.*)$")]
    private static partial Regex Row();

    [GeneratedRegex(@"\[([^\]]+)\]\(evidence\.md#([^)]+)\)")]
    private static partial Regex Quote();

    [GeneratedRegex(@"`((?:[A-Z][A-Za-z]+(?:\.Tests)?|tests)/[A-Za-z0-9/.*-]+)`")]
    private static partial Regex FileName();
}
