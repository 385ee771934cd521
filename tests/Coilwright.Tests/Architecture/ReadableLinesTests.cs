namespace Coilwright.Tests.Architecture;

/// <summary>Sources are read more often than written.</summary>
public sealed class ReadableLinesTests
{
    private static readonly string[] s_folders = ["src", "tests", "bench"];

    [Fact]
    public void No_line_is_longer_than_140_columns() =>
        Assert.Empty(
            from path in Written(".cs", ".razor", ".ts")
            from line in ReadableLines.TooLong(File.ReadAllText(path))
            select $"{Path.GetRelativePath(RepositoryFiles.Root, path)}:{line}"
        );

    [Fact]
    public void No_conditional_expression_stands_inside_another()
    {
        string[] found =
        [
            .. from path in Written(".cs", ".razor")
            let text = File.ReadAllText(path)
            from nested in path.EndsWith(".razor", StringComparison.Ordinal) ? ReadableLines.NestedInPage(text) : ReadableLines.Nested(text)
            select $"{Path.GetRelativePath(RepositoryFiles.Root, path)}: {nested}",
        ];
        Assert.True(found.Length == 0, string.Join('\n', found));
    }

    // Proof that each check fails when its rule is broken.
    [Fact]
    public void A_planted_long_line_is_caught() => Assert.Equal([2], ReadableLines.TooLong("short\n" + new string('x', 141) + "\nshort"));

    [Theory]
    [InlineData("class A { int B(int c) => c > 0 ? 1 : c < 0 ? -1 : 0; }", 1)]
    [InlineData("class A { string B(int c) => c > 0 ? $\"{(c > 1 ? \"many\" : \"one\")}\" : \"none\"; }", 1)]
    [InlineData("class A { int B(int c) => c switch { > 0 => c > 1 ? 2 : 1, _ => 0 }; }", 0)]
    [InlineData("class A { object B(int c) => c > 0 ? () => c > 1 ? 2 : 1 : 0; }", 0)]
    public void A_planted_conditional_inside_another_is_caught(string source, int found) =>
        Assert.Equal(found, ReadableLines.Nested(source).Count());

    [Theory]
    [InlineData("<p>@(C > 0 ? \"a)\" : C < 0 ? \"b\" : \"c\")</p>", 1)]
    [InlineData("<p>@(C > 0 ? 1 : 0)</p>\n@code {\n    int D => C > 0 ? 1 : C < 0 ? -1 : 0;\n}\n", 1)]
    [InlineData("<p>@(C > 0 ? 1 : 0), @(D ? 1 : 0)</p>\n@code {\n    int D => C > 0 ? 1 : 0;\n}\n", 0)]
    public void A_planted_conditional_inside_another_is_caught_on_a_page(string page, int found) =>
        Assert.Equal(found, ReadableLines.NestedInPage(page).Count());

    /// <summary>Migrations are made by a tool.</summary>
    private static IEnumerable<string> Written(params string[] extensions) =>
        s_folders
            .SelectMany(folder => RepositoryFiles.Written(folder, extensions))
            .Where(path =>
                !path.Contains($"{Path.DirectorySeparatorChar}Migrations{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            );
}
