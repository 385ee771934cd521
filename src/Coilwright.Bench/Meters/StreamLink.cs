using System.Globalization;
using System.Threading.Channels;

namespace Coilwright.Bench.Meters;

/// <summary>A line over a stream of bytes: a network connection or a serial line.</summary>
/// <param name="stream">The stream.</param>
/// <param name="end">What ends a line.</param>
/// <param name="owner">What is closed with it.</param>
public sealed class StreamLink(Stream stream, string end, IDisposable owner) : IMeterLink
{
    private readonly LinePump _pump = new(stream, end);

    /// <inheritdoc/>
    public async Task TellAsync(string line, CancellationToken cancel)
    {
        try
        {
            await stream.WriteAsync(LineText.BytesOf(line, end), cancel).ConfigureAwait(false);
            await stream.FlushAsync(cancel).ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is IOException or ObjectDisposedException or InvalidOperationException)
        {
            throw Lost();
        }
    }

    /// <inheritdoc/>
    public async Task<string> AskAsync(string ask, TimeSpan wait, CancellationToken cancel)
    {
        if (ask.Length > 0)
        {
            while (_pump.Lines.TryRead(out _)) { }
            await TellAsync(ask, cancel).ConfigureAwait(false);
        }

        using CancellationTokenSource late = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        late.CancelAfter(wait);
        try
        {
            return await _pump.Lines.ReadAsync(late.Token).ConfigureAwait(false);
        }
        catch (ChannelClosedException)
        {
            throw Lost();
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            throw Silent(ask, wait);
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        owner.Dispose();
        await _pump.DisposeAsync().ConfigureAwait(false);
    }

    private InstrumentException Lost() =>
        _pump.Begun.Length > 0
            ? new InstrumentException(
                InstrumentTrouble.Lost,
                "the connection ended in the middle of a line: look at the cable",
                _pump.Begun
            )
            : new InstrumentException(InstrumentTrouble.Lost, "the connection to the instrument ended: look at the cable and its switch");

    private InstrumentException Silent(string ask, TimeSpan wait)
    {
        string seconds = string.Create(CultureInfo.InvariantCulture, $"{wait.TotalSeconds:0.###} s");
        string begun = _pump.Begun;
        if (begun.Length > 0)
        {
            string cut =
                $"the instrument sent \"{begun}\" and never ended the line within {seconds}: is the line end of its profile right?";
            return new InstrumentException(InstrumentTrouble.Silent, cut, begun);
        }

        string silent =
            ask.Length > 0
                ? $"the instrument did not answer \"{ask}\" within {seconds}: is it on, and does it know these words?"
                : $"the instrument sent nothing within {seconds}: is it set to send by itself?";
        return new InstrumentException(InstrumentTrouble.Silent, silent);
    }
}
