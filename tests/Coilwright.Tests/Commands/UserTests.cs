using System.Diagnostics;
using System.Net;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Coilwright.Tests.Commands;

/// <summary>Accounts and tokens at the command line, and a shop that is served beyond this computer.</summary>
public sealed class UserTests
{
    private const string Password = "tar and feathers 7";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task People_are_added_given_another_role_and_removed_and_an_owner_stays()
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await DoneAsync("", "recipe", "list", "--shop", await MadeAsync(folder));
        CommandRun first = await RunAsync(Password, "user", "add", "Tove", "--role", "winder", "--shop", shop);
        Assert.Equal(ExitCode.WrongInput, first.Exit);
        Assert.Contains("--role: the first account of a shop is its owner's", first.Error, StringComparison.Ordinal);

        await DoneAsync(Password, "user", "add", "Ines", "--role", "owner", "--shop", shop);
        string made = (await DoneAsync("", "user", "add", "Tove", "--role", "winder", "--shop", shop)).Output;
        Assert.Contains("shown this once: ", made, StringComparison.Ordinal);
        Assert.Contains("tester", (await DoneAsync("", "user", "role", "tove", "tester", "--shop", shop)).Output, StringComparison.Ordinal);
        string list = (await DoneAsync("", "user", "list", "--shop", shop)).Output;
        Assert.Matches("Ines +owner", list);
        Assert.Matches("Tove +tester", list);

        CommandRun wrong = await RunAsync("short", "user", "add", "Ines", "--role", "king", "--shop", shop);
        Assert.Contains("--role: \"king\" is no role", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("password: ", wrong.Error, StringComparison.Ordinal);
        CommandRun last = await RunAsync("", "user", "remove", "Ines", "--shop", shop);
        Assert.Contains("Ines is the only owner", last.Error, StringComparison.Ordinal);
        await DoneAsync("", "user", "remove", "Tove", "--shop", shop);
        Assert.DoesNotContain("Tove", (await DoneAsync("", "user", "list", "--shop", shop)).Output, StringComparison.Ordinal);
        await DoneAsync("another long password", "user", "password", "Ines", "--shop", shop);
    }

    [Fact]
    public async Task A_token_s_key_is_shown_once()
    {
        using TestFolder folder = new();
        string shop = await MadeAsync(folder);
        string made = (await DoneAsync("", "token", "add", "Bench 2", "--days", "30", "--shop", shop)).Output;
        string key = made.Trim().Split(' ')[^1];
        Assert.Equal(43, key.Length);
        string list = (await DoneAsync("", "token", "list", "--shop", shop)).Output;
        Assert.Matches("Bench 2 +instrument", list);
        Assert.DoesNotContain(key, list, StringComparison.Ordinal);
        CommandRun wrong = await RunAsync("", "token", "add", "Bench 2", "--role", "owner", "--days", "0", "--shop", shop);
        Assert.Contains("--role", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("--days", wrong.Error, StringComparison.Ordinal);
        await DoneAsync("", "token", "remove", "bench 2", "--shop", shop);
        Assert.Equal(ExitCode.WrongInput, (await RunAsync("", "token", "remove", "bench 2", "--shop", shop)).Exit);
    }

    [Fact]
    public async Task Beyond_this_computer_it_is_served_over_HTTPS_with_the_certificate_that_was_printed()
    {
        using TestFolder folder = new();
        string shop = await MadeAsync(folder);
        await DoneAsync(Password, "user", "add", "Ines", "--role", "owner", "--shop", shop);
        ProcessStartInfo start = ServeTests.Start(folder, "serve", "--shop", shop, "--listen", "0.0.0.0", "--port", "0");
        using Process serve = Process.Start(start)!;
        try
        {
            List<string> said = [];
            while (said.LastOrDefault()?.Contains("The pages are at", StringComparison.Ordinal) != true)
            {
                said.Add(await serve.StandardOutput.ReadLineAsync(Cancel) ?? throw new InvalidOperationException(string.Join('\n', said)));
            }

            string port = said[^1].Split(':')[^1].Split(' ', '/')[0];
            string shown = "";
            using SocketsHttpHandler handler = new() { AllowAutoRedirect = false, SslOptions = Options(found => shown = found) };
            using HttpClient client = new(handler);
            using HttpResponseMessage asked = await client.GetAsync(new Uri($"https://127.0.0.1:{port}/"), Cancel);
            Assert.Equal(HttpStatusCode.Redirect, asked.StatusCode);
            Assert.Contains(said, line => line.Trim() == shown);
            using FormUrlEncodedContent form = new([new("name", "Ines"), new("password", Password)]);
            using HttpResponseMessage signed = await client.PostAsync(new Uri($"https://127.0.0.1:{port}/sign-in"), form, Cancel);
            Assert.Contains("secure", Assert.Single(signed.Headers.GetValues("Set-Cookie")), StringComparison.OrdinalIgnoreCase);
            await Assert.ThrowsAsync<HttpRequestException>(() => client.GetAsync(new Uri($"http://127.0.0.1:{port}/"), Cancel));
        }
        finally
        {
            serve.Kill(entireProcessTree: true);
            await serve.WaitForExitAsync(Cancel);
        }

        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(shop + ".certificate-key.pem"));
        }
    }

    [Fact]
    public async Task A_certificate_that_cannot_be_read_is_refused()
    {
        using TestFolder folder = new();
        string shop = await MadeAsync(folder);
        folder.Write("c.pem", "no certificate");
        CommandRun alone = await CommandRun.Of("serve", "--shop", shop, "--certificate", folder.PathOf("c.pem"));
        Assert.Contains("--certificate-key", alone.Error, StringComparison.Ordinal);
        CommandRun broken = await CommandRun.Of(
            "serve",
            "--shop",
            shop,
            "--certificate",
            folder.PathOf("c.pem"),
            "--certificate-key",
            folder.PathOf("gone.pem")
        );
        Assert.Equal(ExitCode.WrongInput, broken.Exit);
        Assert.Contains("cannot be read as a certificate", broken.Error, StringComparison.Ordinal);
    }

    /// <summary>Takes whatever certificate is shown, and tells its SHA-256 as it is printed.</summary>
    private static SslClientAuthenticationOptions Options(Action<string> shown) =>
        new()
        {
#pragma warning disable CA5359 // the test compares the certificate itself
            RemoteCertificateValidationCallback = (_, certificate, _, _) =>
            {
                byte[] hash = SHA256.HashData(((X509Certificate2)certificate!).RawData);
                shown(string.Join(':', Convert.ToHexString(hash).Chunk(2).Select(pair => new string(pair))));
                return true;
            },
#pragma warning restore CA5359
        };

    private static async Task<string> MadeAsync(TestFolder folder)
    {
        string shop = folder.PathOf("shop.db");
        await using Coilwright.Application.Shops.OpenedShop made = await Coilwright.Application.Shops.OpenedShop.CreateAsync(
            shop,
            "Lantern Quay workshop",
            TimeProvider.System,
            Cancel
        );
        return shop;
    }

    private static async Task<CommandRun> DoneAsync(string typed, params string[] words)
    {
        CommandRun run = await RunAsync(typed, words);
        Assert.True(run.Exit == ExitCode.Done, run.Error);
        return run;
    }

    private static async Task<CommandRun> RunAsync(string typed, params string[] words)
    {
        using StringWriter output = new(),
            error = new();
        using StringReader input = new(typed + "\n");
        int exit = await Cli.RunAsync(words, output, error, cancel: Cancel, input: input);
        return new CommandRun(exit, output.ToString(), error.ToString());
    }
}
