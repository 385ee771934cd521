using System.Text.RegularExpressions;

namespace Coilwright.Tests.Architecture;

/// <summary>The program works with no network: nothing it compiles or serves names an address outside the machine.</summary>
public sealed partial class OutsideAddressTests
{
    private static readonly string[] s_compiledOrServed = [".cs", ".razor", ".cshtml", ".html", ".css", ".ts", ".js", ".svg"];

    /// <summary>Names, not addresses that anything is fetched from: XML namespaces and identities of schemas.</summary>
    private static readonly string[] s_namesOnly =
    [
        "http://www.w3.org/",
        "https://json-schema.org/",
        "https://coilwright.example/schemas/",
    ];

    [Fact]
    public void Sources_name_no_outside_address() =>
        Assert.Empty(
            RepositoryFiles
                .Written("src", s_compiledOrServed)
                .SelectMany(path =>
                    OutsideAddresses(WithoutComments(File.ReadAllText(path)))
                        .Select(address => $"{Path.GetRelativePath(RepositoryFiles.Root, path)}: {address}")
                )
        );

    [Fact]
    public void Schemas_name_no_outside_address_but_their_dialect()
    {
        Assert.Empty(
            Directory
                .EnumerateFiles(RepositoryFiles.PathOf("schemas"), "*.json")
                .SelectMany(path => OutsideAddresses(File.ReadAllText(path)).Select(address => $"{Path.GetFileName(path)}: {address}"))
        );
    }

    [Theory]
    [InlineData("""<script src="https://cdn.example.com/x.js"></script>""", "https://cdn.example.com/x.js")]
    [InlineData("""@import "//fonts.example.com/f.css";""", "//fonts.example.com/f.css")]
    [InlineData("""fetch("HTTP://example.org/a")""", "HTTP://example.org/a")]
    [InlineData("""var u = "http://localhost.example.org/";""", "http://localhost.example.org/")]
    public void A_planted_address_is_caught(string source, string address) => Assert.Equal([address], OutsideAddresses(source));

    [Theory]
    [InlineData("http://127.0.0.1:5080/")]
    [InlineData("http://localhost:5080/")]
    [InlineData("http://[::1]:5080/")]
    [InlineData("http://www.w3.org/2000/svg")]
    [InlineData("https://json-schema.org/draft/2020-12/schema")]
    public void Loopback_and_mere_names_are_let_through(string address) => Assert.Empty(OutsideAddresses($"\"{address}\""));

    [Fact]
    public void A_source_named_in_a_comment_is_let_through_but_not_one_behind_code()
    {
        Assert.Empty(OutsideAddresses(WithoutComments("    /// From https://example.org/paper.\n    // and https://example.org/other\n")));
        Assert.NotEmpty(OutsideAddresses(WithoutComments("string a = \"https://example.org/\"; // from the paper\n")));
    }

    /// <summary>A comment fetches nothing: lines that are comments alone go.</summary>
    private static string WithoutComments(string source) => CommentLine().Replace(source, "");

    private static IReadOnlyList<string> OutsideAddresses(string text) =>
        [
            .. Address()
                .Matches(text)
                .Select(match => match.Groups[1].Value)
                .Where(address =>
                    !Loopback().IsMatch(address) && !s_namesOnly.Any(name => address.StartsWith(name, StringComparison.Ordinal))
                ),
        ];

    [GeneratedRegex(
        """(?:^|["'(`\s=>])((?:https?:)?//[A-Za-z0-9\[{][^\s"'<>)`]*\.[^\s"'<>)`]*|https?://[^\s"'<>)`]+)""",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex Address();

    [GeneratedRegex(@"^\s*//.*$", RegexOptions.Multiline)]
    private static partial Regex CommentLine();

    [GeneratedRegex(@"^https?://(127\.0\.0\.1|localhost|\[::1\]|\{[^}]*\})(:|/|$)", RegexOptions.IgnoreCase)]
    private static partial Regex Loopback();
}
