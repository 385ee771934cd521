using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Coilwright.Tests;

/// <summary>
/// The commands that README shows do run. A block marked &lt;!-- run --&gt; is executed as it stands, beside a copy of the demo files, with
/// the program just built.
/// </summary>
public sealed partial class ReadmeTests
{
    [Fact]
    public async Task Every_marked_block_of_README_runs()
    {
        IReadOnlyList<string> blocks = MarkedBlocks(
            await File.ReadAllTextAsync(RepositoryFiles.PathOf("README.md"), TestContext.Current.CancellationToken)
        );

        Assert.NotEmpty(blocks);
        foreach (string block in blocks)
        {
            (int exit, string output) = await RunAsync(block);
            Assert.True(exit == 0, $"Exit {exit} from:\n{block}\n{output}");
        }
    }

    [Fact]
    public async Task A_planted_block_that_fails_is_caught()
    {
        string block = MarkedBlocks(
                "# Title\n\n```sh\nfalse # not marked\n```\n\n<!-- run -->\n```sh\n./coilwright --version\n./coilwright predict "
                    + "nowhere.json\necho not reached\n```\n"
            )
            .Single();

        (int exit, string output) = await RunAsync(block);

        Assert.Equal(2, exit);
        Assert.Contains("there is no such file", output, StringComparison.Ordinal);
        Assert.DoesNotContain("not reached", output, StringComparison.Ordinal);
    }

    private static IReadOnlyList<string> MarkedBlocks(string markdown) =>
        [.. Block().Matches(markdown.ReplaceLineEndings("\n")).Select(match => match.Groups[1].Value)];

    private static async Task<(int Exit, string Output)> RunAsync(string script)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("coilwright-readme-");
        try
        {
            CopyFolder(RepositoryFiles.PathOf("demo"), Path.Combine(folder.FullName, "demo"));
            string launcher = Path.Combine(folder.FullName, "coilwright");
            await File.WriteAllTextAsync(
                launcher,
                $"#!/bin/sh\nexec dotnet '{Path.Combine(AppContext.BaseDirectory, "coilwright.dll")}' \"$@\"\n"
            );
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(launcher, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }

            ProcessStartInfo start = new("bash", ["-c", "set -euo pipefail\n{\n" + script + "\n} 2>&1"])
            {
                WorkingDirectory = folder.FullName,
                RedirectStandardOutput = true,
                RedirectStandardInput = true,
            };
            start.Environment["COILWRIGHT_SHOP"] = Path.Combine(folder.FullName, "shop.db");
            using Process process = Process.Start(start)!;
            process.StandardInput.Close();
            string output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            return (process.ExitCode, output);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void CopyFolder(string from, string to)
    {
        foreach (string path in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(to, Path.GetRelativePath(from, path));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(path, target);
        }
    }

    [GeneratedRegex("<!-- run -->\\s*\n```sh\n(.*?)\n```", RegexOptions.Singleline)]
    private static partial Regex Block();
}
