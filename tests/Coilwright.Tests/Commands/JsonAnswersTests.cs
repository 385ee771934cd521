using System.CommandLine;
using System.Diagnostics;

namespace Coilwright.Tests.Commands;

/// <summary>
/// Every schema compiles in the validator that most programs use (ajv, draft 2020-12), and every demo file and every --json answer
/// validates there.
/// </summary>
public sealed class JsonAnswersTests
{
    /// <summary>
    /// Written as a bare list without a format, needing a recording or a set that the demo has not, or without an end.
    /// </summary>
    private static readonly string[] s_apart = ["recipe list", "sweep read", "set show", "meter watch"];

    [Fact]
    public async Task Every_answer_and_every_demo_file_validates_where_most_programs_validate()
    {
        using TestFolder folder = new();
        string answers = folder.PathOf("answers"),
            shop = folder.PathOf("shop.db");
        Directory.CreateDirectory(answers);
        CommandRun demo = await CommandRun.Of("demo", "--no-serve", "--shop", shop);
        Assert.Equal((0, ""), (demo.Exit, demo.Error));
        IReadOnlyDictionary<string, string> files = JsonCommandLines.Files(folder.Write, RepositoryFiles.Root, shop);
        for (int n = 0; n < JsonCommandLines.All.Count; n++)
        {
            string[] words = JsonCommandLines.Words(JsonCommandLines.All[n], RepositoryFiles.Root, files);
            CommandRun run = await CommandRun.Of(words);
            Assert.True(run.Exit is 0 or 1 && run.Error.Length == 0, JsonCommandLines.All[n] + ": " + run.Error);
            await File.WriteAllTextAsync(
                Path.Combine(answers, FormattableString.Invariant($"{n}.json")),
                run.Output,
                TestContext.Current.CancellationToken
            );
        }

        (int exit, string said) = await CheckAsync(
            RepositoryFiles.PathOf("schemas"),
            RepositoryFiles.PathOf("demo"),
            RepositoryFiles.PathOf("src/Coilwright.Workshop/Recipes/Circuits/Loads"),
            answers
        );
        Assert.True(exit == 0, said);
    }

    [Fact]
    public void No_command_that_writes_json_is_forgotten()
    {
        using StringWriter nowhere = new();
        using CommandContext desk = new(nowhere, nowhere, TimeProvider.System);
        string[] written = [.. Writing(Cli.BuildRoot(desk), "").Order(StringComparer.Ordinal)];
        string[] forgotten =
        [
            .. written.Where(name =>
                !s_apart.Contains(name) && !JsonCommandLines.All.Any(line => line.StartsWith(name + " ", StringComparison.Ordinal))
            ),
        ];
        Assert.True(written.Length > 12 && forgotten.Length == 0, string.Join(", ", forgotten));
    }

    [Theory]
    [InlineData(
        """{ "format": "coilwright.lumped/1", "resistance": "7.8 kΩ", "inductance": "4.4 H", "capacitance": 120 }""",
        "/capacitance"
    )]
    [InlineData("""{ "format": "coilwright.nothing/1" }""", "no schema")]
    public async Task A_document_that_breaks_its_schema_is_told(string document, string told)
    {
        using TestFolder folder = new();
        (int exit, string said) = await CheckAsync(RepositoryFiles.PathOf("schemas"), folder.Write("planted.json", document));
        Assert.Equal(1, exit);
        Assert.Contains(told, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pattern_that_is_no_regular_expression_of_the_standard_is_told()
    {
        using TestFolder folder = new();
        folder.Write(
            "planted.json",
            """
            { "$schema": "https://json-schema.org/draft/2020-12/schema", "$id": "https://coilwright.example/schemas/planted.json",
              "type": "string", "pattern": "in|\\\"" }
            """
        );
        (int exit, string said) = await CheckAsync(Path.GetDirectoryName(folder.PathOf("planted.json"))!);
        Assert.Equal(1, exit);
        Assert.Contains("does not compile", said, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Writing(Command command, string path)
    {
        foreach (Command child in command.Subcommands)
        {
            string name = (path + " " + child.Name).Trim();
            if (child.Options.Any(option => option.Name == "--json"))
            {
                yield return name;
            }

            foreach (string below in Writing(child, name))
            {
                yield return below;
            }
        }
    }

    private static async Task<(int Exit, string Said)> CheckAsync(params string[] places)
    {
        ProcessStartInfo start = new("node") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(RepositoryFiles.PathOf("tests/Outside/schemas/check.mjs"));
        places.ToList().ForEach(start.ArgumentList.Add);
        using Process node = Process.Start(start)!;
        Task<string> output = node.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken),
            error = node.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await node.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (node.ExitCode, await output + await error);
    }
}
