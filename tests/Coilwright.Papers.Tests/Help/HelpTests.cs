using System.Text.RegularExpressions;
using Coilwright.Papers.Help;

namespace Coilwright.Papers.Tests.Help;

/// <summary>The guides inside the program: their links end somewhere, lead nowhere outside, and carry no markup of their own.</summary>
public sealed partial class HelpTests
{
    public static TheoryData<string> Names => [.. HelpLibrary.All.Select(page => page.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_link_of_a_page_ends_in_help_at_an_anchor_that_is_there(string name)
    {
        string html = HelpHtmlWriter.Render(HelpLibrary.Find(name)!);
        Assert.StartsWith("<h1 id=", html, StringComparison.Ordinal);
        Assert.All(Addresses(html), address => Assert.True(Ends(name, address), address));
        Assert.DoesNotMatch("<(script|style|iframe|img|form|a id)\\b", html);
    }

    [Fact]
    public void Every_guide_of_the_project_stands_in_the_list()
    {
        string folder = Path.Combine(RepositoryRoot(), "docs", "guide");
        Assert.Equal(
            Directory.EnumerateFiles(folder, "*.md").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal),
            HelpLibrary.Guides.Select(page => page.Name).Order(StringComparer.Ordinal)
        );
        Assert.All(HelpLibrary.Guides, page =>
            Assert.Equal(File.ReadAllText(Path.Combine(folder, page.Name + ".md")).ReplaceLineEndings("\n"), page.Markdown)
        );
    }

    [Theory]
    [InlineData("# t\n\n[a](https://example.org/x)", "a (https://example.org/x)")]
    [InlineData("# t\n\n<https://example.org/x>", "https://example.org/x")]
    [InlineData("# t\n\n![a](https://example.org/x.png)", "a (https://example.org/x.png)")]
    [InlineData("# t\n\n[a](javascript:alert(1))", "<p>a</p>")]
    [InlineData("# t\n\n[a](//example.org/glossary.md)", "<p>a</p>")]
    [InlineData("# t\n\n[a](../formats/machine.md)", "<p>a</p>")]
    [InlineData("# t\n\nb <script>x</script>", "b &lt;script&gt;x&lt;/script&gt;")]
    [InlineData("# t\n\n<div onclick=x>\nb\n</div>", "&lt;div onclick=x&gt;")]
    [InlineData("# t\n\n[a](../sources.md#gum)", "<a href=\"/help/sources#gum\">a</a>")]
    [InlineData("# t\n\nby both [GUM, Grover].", "<a href=\"/help/sources#gum\">GUM</a> <a href=\"/help/sources#grover\">Grover</a>")]
    public void A_link_outside_and_a_tag_are_words_and_a_link_inside_is_a_link(string markdown, string expected)
    {
        string html = HelpHtmlWriter.Render(markdown);
        Assert.Contains(expected, html, StringComparison.Ordinal);
        Assert.All(Addresses(html), address => Assert.StartsWith("/help/", address, StringComparison.Ordinal));
    }

    [Fact]
    public void Steps_rows_and_headings_can_be_opened()
    {
        Assert.Contains("<li id=\"what-may-move\">", HelpHtmlWriter.Render(HelpLibrary.Find("assembly-day")!), StringComparison.Ordinal);
        Assert.Contains("<tr id=\"basis\">", HelpHtmlWriter.Render(HelpLibrary.Find("glossary")!), StringComparison.Ordinal);
        Assert.Contains("<tr id=\"rods-fast\">", HelpHtmlWriter.Render(HelpLibrary.Find("evidence")!), StringComparison.Ordinal);
        Assert.Contains("<h2 id=\"the-fit\">", HelpHtmlWriter.Render(HelpLibrary.Find("measuring-impedance")!), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_key_of_the_sources_and_every_source_said_in_words_opens_its_line()
    {
        Assert.True(SourceKeys.All.Count > 50, $"only {SourceKeys.All.Count}");
        Assert.All(SourceKeys.All, key =>
            Assert.True(Ends("theory", SourceKeys.In($"[{key}]").Single(part => part.Address is not null).Address!))
        );
        Assert.All(SourceKeys.Words, word => Assert.True(Ends("theory", word.Value), word.Key));
        Assert.Equal(
            [("standard copper [", null), ("IEC60028", "/help/sources#iec60028"), ("], [no key]", null)],
            SourceKeys.In("standard copper [IEC60028], [no key]")
        );
    }

    [Fact]
    public void Words_are_found_where_they_stand_whatever_their_capitals()
    {
        IReadOnlyList<HelpHit> hits = HelpFinder.Find("POT life");
        Assert.Contains(hits, hit => hit.Address == "/help/assembly-day#ink");
        Assert.All(hits, hit => Assert.Contains("pot", hit.Words, StringComparison.OrdinalIgnoreCase));
        Assert.Empty(HelpFinder.Find("   "));
        Assert.Empty(HelpFinder.Find("no such words anywhere"));
    }

    private static bool Ends(string from, string address)
    {
        string[] parts = address.Split('#', 2);
        HelpPage? page = HelpLibrary.Find(parts[0].Length == 0 ? from : parts[0].Replace("/help/", "", StringComparison.Ordinal));
        return page is not null
            && (parts.Length == 1 || HelpHtmlWriter.Render(page).Contains($" id=\"{parts[1]}\"", StringComparison.Ordinal));
    }

    private static IEnumerable<string> Addresses(string html) => Address().Matches(html).Select(match => match.Groups[1].Value);

    private static string RepositoryRoot()
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Coilwright.slnx")))
        {
            folder = folder.Parent!;
        }

        return folder.FullName;
    }

    [GeneratedRegex("(?:href|src|action)=\"([^\"]*)\"")]
    private static partial Regex Address();
}
