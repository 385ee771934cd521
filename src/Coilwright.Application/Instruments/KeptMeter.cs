using Coilwright.Bench.Meters;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>An instrument that is asked again and again; a lost line is opened anew at the next question.</summary>
internal sealed class KeptMeter(MeterProfile profile, MeterAddress address) : IAsyncDisposable
{
    private OpenMeter? _open;

    /// <summary>The next answer, or why there is none.</summary>
    public async Task<(MeterAnswer? Answer, InstrumentException? Fault)> AskAsync(CancellationToken cancel)
    {
        try
        {
            _open ??= await OpenMeter.OpenAsync(profile, address, cancel).ConfigureAwait(false);
            return (await _open.AskAsync(cancel).ConfigureAwait(false), null);
        }
        catch (InstrumentException fault)
        {
            // One bad answer does not close a good line; a lost line, or an instrument out of step, is opened anew.
            if (fault.Trouble is not (InstrumentTrouble.Nonsense or InstrumentTrouble.WrongUnit))
            {
                await DisposeAsync().ConfigureAwait(false);
            }

            return (null, fault);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_open is { } open)
        {
            _open = null;
            await open.DisposeAsync().ConfigureAwait(false);
        }
    }
}
