namespace Coilwright.Tests.Commands;

/// <summary>One command line run in this process, with what it wrote.</summary>
internal sealed record CommandRun(int Exit, string Output, string Error)
{
    public static async Task<CommandRun> Of(params string[] args)
    {
        using StringWriter output = new(),
            error = new();
        int exit = await Cli.RunAsync(args, output, error, cancel: TestContext.Current.CancellationToken);
        return new CommandRun(exit, output.ToString(), error.ToString());
    }
}

/// <summary>A folder for one test's files; gone with it.</summary>
internal sealed class TestFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("coilwright-test-");

    public string PathOf(string name) => Path.Combine(_folder.FullName, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
