using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Coilwright.Tests.Commands;

/// <summary>The real program, started as a person starts it: where it listens follows from its own options alone.</summary>
public sealed class ServeTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_file_and_no_variable_opens_another_address()
    {
        using TestFolder folder = new();
        int planted = FreePort(),
            variable = FreePort();
        folder.Write(
            "appsettings.json",
            $$"""
            { "Kestrel": { "Endpoints": { "Open": { "Url": "http://127.0.0.1:{{planted}}" } } },
              "urls": "http://127.0.0.1:{{planted}}" }
            """
        );
        ProcessStartInfo start = Start(folder, "serve", "--shop", folder.PathOf("shop.db"), "--port", "0");
        start.Environment["Kestrel__Endpoints__Too__Url"] = $"http://127.0.0.1:{variable}";
        start.Environment["ASPNETCORE_Kestrel__Endpoints__Too__Url"] = $"http://127.0.0.1:{variable}";
        start.Environment["ASPNETCORE_URLS"] = $"http://127.0.0.1:{variable}";
        using Process serve = Process.Start(start)!;
        try
        {
            string address = await AddressAsync(serve);
            using HttpClient client = new();
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(new Uri(address + "/api/health"), Cancel)).StatusCode);
            Assert.DoesNotContain(planted.ToString(System.Globalization.CultureInfo.InvariantCulture), address, StringComparison.Ordinal);
            Assert.False(await AnswersAsync(planted));
            Assert.False(await AnswersAsync(variable));
        }
        finally
        {
            serve.Kill(entireProcessTree: true);
            await serve.WaitForExitAsync(Cancel);
        }
    }

    [Theory]
    [InlineData("--listen", "0.0.0.0", "has no accounts")]
    [InlineData("--listen", "192.168.1.4", "has no accounts")]
    [InlineData("--listen", "::", "has no accounts")]
    [InlineData("--listen", "the shop", "no address")]
    [InlineData("--host", "http://bench", "no computer's name")]
    public async Task An_address_of_the_network_is_refused_in_words(string option, string value, string words)
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of("serve", "--shop", folder.PathOf("shop.db"), option, value);
        Assert.Equal(ExitCode.WrongInput, run.Exit);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.PathOf("shop.db")));
    }

    /// <summary>The program of this build, with the test's folder as the current one.</summary>
    internal static ProcessStartInfo Start(TestFolder folder, params string[] args) =>
        new("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "coilwright.dll"), .. args])
        {
            WorkingDirectory = folder.PathOf(""),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };

    /// <summary>The address that the program prints once it serves.</summary>
    internal static async Task<string> AddressAsync(Process serve)
    {
        string said = await serve.StandardOutput.ReadLineAsync(Cancel) ?? await serve.StandardError.ReadToEndAsync(Cancel);
        return said.Split(' ').FirstOrDefault(word => word.StartsWith("http://", StringComparison.Ordinal))
            ?? throw new InvalidOperationException("It does not serve: " + said);
    }

    private static async Task<bool> AnswersAsync(int port)
    {
        using TcpClient client = new();
        try
        {
            await client.ConnectAsync(IPAddress.Loopback, port, Cancel);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
