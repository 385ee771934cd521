using Coilwright.Bench.Meters;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Application.Instruments;

/// <summary>An instrument that answers: its line, and how its answers are read.</summary>
internal sealed class OpenMeter(MeterProfile profile, IMeterLink link) : IAsyncDisposable
{
    private readonly AnswerReader _reader = new(profile);

    /// <summary>Opens the line and says the profile's first words.</summary>
    /// <exception cref="InstrumentException">There is nothing to open.</exception>
    public static async Task<OpenMeter> OpenAsync(MeterProfile profile, MeterAddress address, CancellationToken cancel)
    {
        IMeterLink link = await MeterLinks.OpenAsync(address, profile.End, profile.Serial, cancel).ConfigureAwait(false);
        OpenMeter meter = new(profile, link);
        try
        {
            foreach (string line in profile.Begin)
            {
                await link.TellAsync(line, cancel).ConfigureAwait(false);
            }
        }
        catch
        {
            await link.DisposeAsync().ConfigureAwait(false);
            throw;
        }

        return meter;
    }

    /// <summary>One answer.</summary>
    /// <exception cref="InstrumentException">There is none, or it is no reading.</exception>
    public async Task<MeterAnswer> AskAsync(CancellationToken cancel) =>
        _reader.Read(await link.AskAsync(profile.Ask, profile.Wait, cancel).ConfigureAwait(false));

    public ValueTask DisposeAsync() => link.DisposeAsync();
}
