using System.Threading.Channels;

namespace Coilwright.Bench.Meters;

/// <summary>
/// Reads a stream for as long as it lives and parts it into lines; fragments are put together. A line without its end is none: it may be
/// the half of a number.
/// </summary>
public sealed class LinePump : IAsyncDisposable
{
    /// <summary>A line longer than this has lost its end: it is handed on as far as it came.</summary>
    private const int LongestLine = 4096;

    /// <summary>Lines that may wait; older ones go first, as a live value is wanted.</summary>
    private const int Waiting = 65_536;

    private readonly Stream _stream;
    private readonly byte _end;
    private readonly bool _keepEmpty;
    private readonly Channel<string> _lines = Channel.CreateBounded<string>(
        new BoundedChannelOptions(Waiting) { FullMode = BoundedChannelFullMode.Wait, SingleWriter = true }
    );
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _pump;
    private volatile string _begun = "";

    /// <param name="stream">Read until it ends, and closed with the pump.</param>
    /// <param name="end">What ends a line; its last character counts, others are trimmed.</param>
    /// <param name="keepEmpty">True where an empty line says something, as a pulse does.</param>
    public LinePump(Stream stream, string end, bool keepEmpty = false)
    {
        _keepEmpty = keepEmpty;
        _stream = stream;
        _end = (byte)(end.Length == 0 ? '\n' : end[^1]);
        _pump = Task.Run(PumpAsync);
    }

    /// <summary>The lines, in order; ended when the stream is.</summary>
    public ChannelReader<string> Lines => _lines.Reader;

    /// <summary>What came of a line whose end has not come yet.</summary>
    public string Begun => _begun;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync().ConfigureAwait(false);
        await _stream.DisposeAsync().ConfigureAwait(false);
        await Task.WhenAny(_pump, Task.Delay(TimeSpan.FromSeconds(1))).ConfigureAwait(false);
        _stop.Dispose();
    }

    private async Task PumpAsync()
    {
        byte[] buffer = new byte[4096];
        List<byte> line = [];
        try
        {
            for (int got; (got = await _stream.ReadAsync(buffer, _stop.Token).ConfigureAwait(false)) > 0; )
            {
                for (int i = 0; i < got; i++)
                {
                    await AddAsync(line, buffer[i]).ConfigureAwait(false);
                }

                _begun = LineText.Of([.. line]).Trim();
            }
        }
        catch (Exception failure)
            when (failure is IOException or ObjectDisposedException or InvalidOperationException or UnauthorizedAccessException)
        {
            // A pulled cable ends the lines; what was begun is told by whoever waits for one.
        }
        catch (OperationCanceledException)
        {
            // Closed by us.
        }
        finally
        {
            _lines.Writer.TryComplete();
        }
    }

    private async ValueTask AddAsync(List<byte> line, byte next)
    {
        if (next != _end)
        {
            line.Add(next);
        }

        if (next != _end && line.Count < LongestLine)
        {
            return;
        }

        string text = LineText.Of([.. line]).Trim('\r', '\n');
        line.Clear();
        if (_keepEmpty || text.Trim().Length > 0)
        {
            await _lines.Writer.WriteAsync(text, _stop.Token).ConfigureAwait(false);
        }
    }
}
