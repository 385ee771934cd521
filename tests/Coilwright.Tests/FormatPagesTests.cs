using System.Diagnostics;

namespace Coilwright.Tests;

/// <summary>Every file format has a page in docs/formats that says what its schema says.</summary>
public sealed class FormatPagesTests
{
    [Fact]
    public async Task Every_schema_has_a_page_and_the_pages_are_what_the_schemas_make()
    {
        string folder = Directory.CreateTempSubdirectory("coilwright-formats-").FullName;
        try
        {
            using Process node = Process.Start(new ProcessStartInfo("node", [RepositoryFiles.PathOf("schemas/make-pages.mjs"), folder]))!;
            await node.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(0, node.ExitCode);
            string[] made = [.. Directory.GetFiles(folder).Select(Path.GetFileName).Order()!];
            string[] kept = [.. Directory.GetFiles(RepositoryFiles.PathOf("docs/formats")).Select(Path.GetFileName).Order()!];
            Assert.Equal(made, kept);
            Assert.Equal(Directory.GetFiles(RepositoryFiles.PathOf("schemas"), "*.json").Length + 1, made.Length);
            Assert.All(made, name =>
                Assert.True(
                    File.ReadAllText(Path.Combine(folder, name))
                        == File.ReadAllText(Path.Combine(RepositoryFiles.PathOf("docs/formats"), name)),
                    $"docs/formats/{name} is out of date: run node schemas/make-pages.mjs"
                )
            );
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
