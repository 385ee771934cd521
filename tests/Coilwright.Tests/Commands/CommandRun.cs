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

    /// <summary>One that goes on until it is stopped, as by Ctrl+C.</summary>
    public static async Task<CommandRun> UntilAsync(CancellationToken stopped, params string[] args)
    {
        using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(
            TestContext.Current.CancellationToken,
            stopped
        );
        using StringWriter output = new(),
            error = new();
        int exit = await Cli.RunAsync(args, output, error, cancel: stop.Token);
        return new CommandRun(exit, output.ToString(), error.ToString());
    }

    /// <summary>One that is stopped, as by Ctrl+C, once it has written something.</summary>
    public static async Task<CommandRun> UntilAsync(string written, params string[] args)
    {
        using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        using WatchedWriter output = new(written, stop);
        using StringWriter error = new();
        int exit = await Cli.RunAsync(args, output, error, cancel: stop.Token);
        return new CommandRun(exit, output.ToString(), error.ToString());
    }

    private sealed class WatchedWriter(string awaited, CancellationTokenSource stop) : StringWriter
    {
        public override void Write(string? value)
        {
            base.Write(value);
            Look();
        }

        public override void WriteLine(string? value)
        {
            base.WriteLine(value);
            Look();
        }

        private void Look()
        {
            if (ToString().Contains(awaited, StringComparison.Ordinal))
            {
                stop.Cancel();
            }
        }
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
