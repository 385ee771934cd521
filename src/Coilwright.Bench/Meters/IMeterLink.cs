namespace Coilwright.Bench.Meters;

/// <summary>A line to an instrument: ask and hear, one at a time.</summary>
public interface IMeterLink : IAsyncDisposable
{
    /// <summary>Sends a line that nothing is answered to.</summary>
    /// <param name="line">Without its end.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="InstrumentException">The connection is gone.</exception>
    Task TellAsync(string line, CancellationToken cancel);

    /// <summary>Asks and waits for the line that answers; what came unasked before is thrown away.</summary>
    /// <param name="ask">Without its end; empty to wait for the next line of an instrument that sends by itself.</param>
    /// <param name="wait">How long.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>The line without its end.</returns>
    /// <exception cref="InstrumentException">Nothing came in time, or the connection is gone.</exception>
    Task<string> AskAsync(string ask, TimeSpan wait, CancellationToken cancel);
}
