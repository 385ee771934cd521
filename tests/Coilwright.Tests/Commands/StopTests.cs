using System.Diagnostics;

namespace Coilwright.Tests.Commands;

/// <summary>Ctrl+C is no mistake of the program's: it says "stopped", and serving ends as it should.</summary>
public sealed class StopTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("solve", "--want", "dcResistance=6.2kΩ", "--vary", "turns")]
    [InlineData("spread")]
    public async Task A_command_that_is_stopped_says_so(string command, params string[] more)
    {
        using StringWriter output = new(),
            error = new();
        int exit = await Cli.RunAsync(
            [command, RepositoryFiles.PathOf("demo", "recipes", "sandbar-wide.json"), .. more],
            output,
            error,
            cancel: new CancellationToken(canceled: true)
        );
        Assert.Equal(ExitCode.Stopped, exit);
        Assert.Equal("coilwright: stopped" + Environment.NewLine, error.ToString());
    }

    [Fact]
    public async Task Serving_ends_with_0_on_Ctrl_C()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("sends SIGINT");
        }

        using TestFolder folder = new();
        ProcessStartInfo start = ServeTests.Start(folder, "serve", "--shop", folder.PathOf("shop.db"), "--port", "0");
        if (OperatingSystem.IsLinux())
        {
            // Tests that run in the background of a shell hand on an ignored SIGINT.
            start.ArgumentList.Insert(0, start.FileName);
            start.ArgumentList.Insert(0, "--default-signal=INT");
            start.FileName = "env";
        }

        using Process serve = Process.Start(start)!;
        await ServeTests.AddressAsync(serve);
        using (Process kill = Process.Start("kill", ["-INT", serve.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]))
        {
            await kill.WaitForExitAsync(Cancel);
        }

        await serve.WaitForExitAsync(Cancel).WaitAsync(TimeSpan.FromMinutes(1), Cancel);
        Assert.Equal(ExitCode.Done, serve.ExitCode);
        Assert.Equal("", await serve.StandardError.ReadToEndAsync(Cancel));
    }
}
