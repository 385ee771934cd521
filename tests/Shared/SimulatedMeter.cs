using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Coilwright.Shared;

/// <summary>
/// An instrument on this machine's own network that answers lines with lines, as SCPI instruments do over a raw socket (the lines of
/// IEEE 488.2, from memory of the standard): whole, in fragments, late, twice, garbled or never.
/// </summary>
internal sealed class SimulatedMeter : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly Func<string, IEnumerable<Part>> _answer;
    private readonly Task _work;
    private int _asked;

    /// <param name="answer">The parts of the answer to a line.</param>
    public SimulatedMeter(Func<string, IEnumerable<Part>> answer)
    {
        _answer = answer;
        _listener.Start();
        Address = "127.0.0.1:" + ((IPEndPoint)_listener.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        _work = ServeAsync();
    }

    /// <summary>One piece of an answer, sent after a wait; nothing and a closed line for <see cref="HangsUp"/>.</summary>
    public sealed record Part(string Text, int AfterMs = 0)
    {
        public static readonly Part HangsUp = new("\0hang up");

        public static implicit operator Part(string text) => new(text);
    }

    /// <summary>HOST:PORT.</summary>
    public string Address { get; }

    /// <summary>How often it was asked.</summary>
    public int Asked => _asked;

    /// <summary>Answers the same to every line.</summary>
    public static SimulatedMeter Saying(params Part[] parts) => new(_ => parts);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Dispose();
        await Task.WhenAny(_work, Task.Delay(2000));
        _stop.Dispose();
    }

    private async Task ServeAsync()
    {
        try
        {
            while (true)
            {
                TcpClient client = await _listener.AcceptTcpClientAsync(_stop.Token);
                _ = TalkAsync(client);
            }
        }
        catch (Exception ended) when (ended is OperationCanceledException or SocketException or ObjectDisposedException) { }
    }

    private async Task TalkAsync(TcpClient client)
    {
        using TcpClient open = client;
        open.NoDelay = true;
        try
        {
            using StreamReader lines = new(open.GetStream(), Encoding.UTF8);
            while (await lines.ReadLineAsync(_stop.Token) is { } line)
            {
                Interlocked.Increment(ref _asked);
                foreach (Part part in _answer(line))
                {
                    await Task.Delay(part.AfterMs, _stop.Token);
                    if (part == Part.HangsUp)
                    {
                        return;
                    }

                    await open.GetStream().WriteAsync(Encoding.Latin1.GetBytes(part.Text), _stop.Token);
                }
            }
        }
        catch (Exception ended) when (ended is OperationCanceledException or IOException or ObjectDisposedException) { }
    }
}
