using System.Globalization;

namespace Coilwright.Bench.Meters;

/// <summary>
/// A device of the USB test and measurement class, as Linux shows it: a write is one message to the instrument, a read is one message
/// from it, and a read without a question waits for the driver's own time.
/// </summary>
/// <param name="path">The device: "/dev/usbtmc0".</param>
/// <param name="end">What ends a line.</param>
public sealed class UsbTmcLink(string path, string end) : IMeterLink
{
    private readonly FileStream _device = new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);

    /// <summary>The longest message that is read.</summary>
    private const int LongestMessage = 4096;

    /// <inheritdoc/>
    public async Task TellAsync(string line, CancellationToken cancel)
    {
        try
        {
            await _device.WriteAsync(LineText.BytesOf(line, end), cancel).ConfigureAwait(false);
            await _device.FlushAsync(cancel).ConfigureAwait(false);
        }
        catch (IOException)
        {
            throw Lost();
        }
    }

    /// <inheritdoc/>
    public async Task<string> AskAsync(string ask, TimeSpan wait, CancellationToken cancel)
    {
        await TellAsync(ask, cancel).ConfigureAwait(false);
        byte[] message = new byte[LongestMessage];
        try
        {
            int got = await Task.Run(() => _device.Read(message, 0, message.Length), cancel).WaitAsync(wait, cancel).ConfigureAwait(false);
            return got > 0 ? LineText.Of(message.AsSpan(0, got)).Trim('\r', '\n', '\0') : throw Lost();
        }
        catch (IOException)
        {
            throw Lost();
        }
        catch (TimeoutException)
        {
            throw new InstrumentException(
                InstrumentTrouble.Silent,
                string.Create(CultureInfo.InvariantCulture, $"the instrument did not answer \"{ask}\" within {wait.TotalSeconds:0.###} s")
            );
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _device.DisposeAsync();

    private static InstrumentException Lost() =>
        new(InstrumentTrouble.Lost, "the instrument's device gives no answer: look at the cable, and whether it knows these words");
}
