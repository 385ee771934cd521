using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using Coilwright.Application.Instruments;
using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>Passes on what an instrument on this computer shows to the program that serves the shop.</summary>
/// <remarks>Only what is newest counts: while the server is away nothing is kept but the value that stands still.</remarks>
internal sealed class MeterSender : IDisposable
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(5);

    private readonly HttpClient _client;
    private readonly Uri _address;
    private string _trouble = "";

    /// <param name="server">Where the shop is served.</param>
    /// <param name="path">The instrument or batch there.</param>
    /// <param name="token">What lets this computer in; null where nothing is asked for.</param>
    public MeterSender(Uri server, string path, string? token)
    {
        _address = new Uri(server, path);
        _client = new HttpClient { Timeout = s_patience };
        if (token is not null)
        {
            _client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        }
    }

    /// <summary>Reads an address of a program that serves a shop.</summary>
    /// <exception cref="WrongInputException">It is none.</exception>
    public static Uri AddressOf(string typed) =>
        Uri.TryCreate(typed.Trim(), UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https"
            ? address!
            : throw WrongInputException.About("--send", $"\"{typed}\" is not the address of a served shop", "http://localhost:5210");

    /// <summary>Sends one thing.</summary>
    /// <param name="body">What is sent.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>What is wrong, once for each new trouble; empty when it arrived.</returns>
    public async Task<string> SendAsync(object body, CancellationToken cancel)
    {
        string trouble = await TryAsync(body, cancel).ConfigureAwait(false);
        string news = trouble == _trouble ? "" : trouble;
        _trouble = trouble;
        return news;
    }

    /// <summary>What to send of a sight.</summary>
    public static object BodyOf(MeterSight sight) =>
        sight switch
        {
            MeterSight.Standing one => new
            {
                kind = "standing",
                value = one.Answer.Value,
                raw = one.Answer.Raw,
                id = (Guid?)one.Id,
            },
            MeterSight.Live one => new
            {
                kind = "live",
                value = one.Answer.Value,
                raw = one.Answer.Raw,
            },
            MeterSight.Off one => new { kind = "off", raw = one.Answer.Raw },
            MeterSight.Trouble one => new
            {
                kind = "trouble",
                message = one.Fault.Message,
                raw = one.Fault.Raw,
            },
            _ => throw new ArgumentOutOfRangeException(nameof(sight)),
        };

    public void Dispose() => _client.Dispose();

    private async Task<string> TryAsync(object body, CancellationToken cancel)
    {
        try
        {
            using HttpResponseMessage answer = await _client.PostAsJsonAsync(_address, body, cancel).ConfigureAwait(false);
            return answer.IsSuccessStatusCode
                ? ""
                : $"the shop at {Server} refused it: {await WhyAsync(answer, cancel).ConfigureAwait(false)}";
        }
        catch (HttpRequestException)
        {
            return $"nothing answers at {Server}: is the shop served there?";
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return $"the shop at {Server} does not answer in time";
        }
    }

    private string Server => _address.GetLeftPart(UriPartial.Authority);

    /// <summary>The first problem that the shop names, or the status where it names none.</summary>
    private static async Task<string> WhyAsync(HttpResponseMessage answer, CancellationToken cancel)
    {
        try
        {
            Refusal? told = await answer.Content.ReadFromJsonAsync<Refusal>(cancel).ConfigureAwait(false);
            return told is { Problems: [var first, ..] } ? first.Message : $"status {(int)answer.StatusCode}";
        }
        catch (Exception other) when (other is JsonException or NotSupportedException)
        {
            return $"status {(int)answer.StatusCode}"; // no shop of ours
        }
    }

    private sealed record Refusal(IReadOnlyList<Problem> Problems);
}
