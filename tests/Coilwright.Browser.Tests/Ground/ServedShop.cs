using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>The real program serving a shop of its own in a process of its own, so that it can be killed like a power cut would.</summary>
public sealed class ServedShop : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("coilwright-browser-").FullName;
    private readonly int _port = FreePort();
    private readonly HttpClientHandler _handler = new() { AllowAutoRedirect = false, CheckCertificateRevocationList = true };
    private readonly HttpClient _http;
    private Process? _process;
    private bool _equipped;

    private ServedShop()
    {
        Url = new Uri($"http://127.0.0.1:{_port}");
        _http = new HttpClient(_handler) { BaseAddress = Url };
    }

    public Uri Url { get; }

    public static async Task<ServedShop> StartAsync()
    {
        ServedShop shop = new();
        await shop.RestartAsync();
        return shop;
    }

    /// <summary>Starts the program on the same shop file and waits until it answers.</summary>
    public async Task RestartAsync()
    {
        ProcessStartInfo start = new("dotnet") { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (
            string argument in new[]
            {
                Path.Combine(AppContext.BaseDirectory, "coilwright.dll"),
                "serve",
                "--shop",
                Path.Combine(_folder, "shop.db"),
                "--port",
                $"{_port}",
            }
        )
        {
            start.ArgumentList.Add(argument);
        }

        _process = Process.Start(start)!;
        _process.OutputDataReceived += (_, _) => { };
        _process.BeginOutputReadLine();
        Task<string> errors = _process.StandardError.ReadToEndAsync();
        for (Stopwatch clock = Stopwatch.StartNew(); clock.Elapsed < TimeSpan.FromSeconds(60); await Task.Delay(50))
        {
            Assert.False(_process.HasExited, _process.HasExited ? "the program ended: " + await errors : "");
            if (await AnswersAsync())
            {
                return;
            }
        }

        Assert.Fail("the program did not answer within a minute");
    }

    /// <summary>SIGKILL: no chance to tidy up.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        _process = null;
    }

    /// <summary>Keeps and releases a demo recipe through the same forms that the pages have.</summary>
    public async Task<Guid> ReleasedRecipeAsync(string file = Demo.TallSingleCoil)
    {
        string json = await File.ReadAllTextAsync(Demo.Recipe(file));
        string place = await PostAsync("/recipes", ("json", json), ("person", "Ada"));
        Guid id = Guid.Parse(place.Split('/')[^1]);
        await PostAsync($"/recipes/{id}/release", ("number", "1"), ("person", "Ada"));
        return id;
    }

    /// <summary>Begins a batch and gives its id.</summary>
    public async Task<Guid> BatchAsync(Guid recipeId, int quantity, string name = "H-12")
    {
        string coil = Demo.FirstCoilOf(Demo.TallSingleCoil);
        await EquipAsync();
        string place = await PostAsync(
            $"/recipes/{recipeId}/batches",
            ("id", Guid.NewGuid().ToString()),
            ("number", "1"),
            ("name", name),
            ("coil", coil),
            ("quantity", $"{quantity}"),
            ("prefix", "C-"),
            ("spool", "0117"),
            ("machine", "Winder 2"),
            ("person", "Ada")
        );
        return Guid.Parse(place.Split('/')[2]);
    }

    /// <summary>
    /// Pieces of a two-coil recipe whose only own step is the magnets', so that they reach the final test without a wait; nothing is done
    /// with them yet.
    /// </summary>
    public async Task<IReadOnlyList<string>> PiecesAsync(int count)
    {
        string json = (await File.ReadAllTextAsync(Demo.Recipe("breakwater-twin.json"))).Replace(
            "\"potting\":",
            "\"steps\": [ { \"name\": \"magnets\" } ], \"potting\":",
            StringComparison.Ordinal
        );
        Guid recipe = Guid.Parse((await PostAsync("/recipes", ("json", json), ("person", "Ada"))).Split('/')[^1]);
        await PostAsync($"/recipes/{recipe}/release", ("number", "1"), ("person", "Ada"));
        await RoomAsync("20 C");
        await EquipAsync();
        foreach ((string name, string coil, string prefix) in new[] { ("B-7", "slug", "BS-"), ("B-8", "screw", "BC-") })
        {
            string place = await PostAsync(
                $"/recipes/{recipe}/batches",
                ("id", $"{Guid.NewGuid()}"),
                ("number", "1"),
                ("name", name),
                ("coil", coil),
                ("quantity", $"{count}"),
                ("prefix", prefix),
                ("spool", "0117"),
                ("machine", "Winder 2"),
                ("person", "Ada")
            );
            for (int at = 1; at <= count; at++)
            {
                using JsonContent entry = JsonContent.Create(
                    new
                    {
                        id = Guid.NewGuid(),
                        batchId = place.Split('/')[2],
                        tag = $"{prefix}{at:000}",
                        resistance = "3.93 k",
                    }
                );
                using HttpResponseMessage answer = await SendAsync(Guid.Parse(place.Split('/')[2]), entry);
                Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            }
        }

        List<string> serials = [];
        for (int at = 1; at <= count; at++)
        {
            string place = await PostAsync(
                "/assembly",
                ("id", $"{Guid.NewGuid()}"),
                ("recipe", $"{recipe}"),
                ("set", $"B-7/{at},B-8/{at}"),
                ("magnets", "M-5")
            );
            serials.Add(place.Split('/')[^1].Split('?')[0]);
        }

        return serials;
    }

    /// <summary>A winder and a spool on record, once.</summary>
    private async Task EquipAsync()
    {
        if (!_equipped)
        {
            _equipped = true;
            await PostAsync("/machines", ("json", """{ "format": "coilwright.machine/1", "name": "Winder 2", "kind": "hand-guided" }"""));
            await PostAsync("/spools", ("label", "0117"), ("gauge", "AWG 42"), ("insulation", "plain-enamel"), ("build", "single"));
        }
    }

    public Task RoomAsync(string typed) => PostAsync("/room", ("room", typed), ("back", "/"));

    /// <summary>Posts an entry as the outbox does.</summary>
    public Task<HttpResponseMessage> SendAsync(Guid batchId, HttpContent entry) =>
        _http.PostAsync(new Uri($"/api/batches/{batchId}/coils", UriKind.Relative), entry);

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
        {
            await KillAsync();
        }

        _http.Dispose();
        _handler.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private async Task<string> PostAsync(string path, params (string Name, string Value)[] fields)
    {
        using FormUrlEncodedContent form = new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        using HttpResponseMessage answer = await _http.PostAsync(new Uri(path, UriKind.Relative), form);
        Assert.True(answer.StatusCode == HttpStatusCode.Found, $"{path}: {answer.StatusCode}\n{await answer.Content.ReadAsStringAsync()}");
        return answer.Headers.Location!.ToString();
    }

    private async Task<bool> AnswersAsync()
    {
        try
        {
            using HttpResponseMessage answer = await _http.GetAsync(new Uri("/api/health", UriKind.Relative));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
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
