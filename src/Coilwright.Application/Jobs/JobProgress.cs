using System.Globalization;

namespace Coilwright.Application.Jobs;

/// <summary>How far long work is.</summary>
/// <param name="Waits">True while other work takes all places.</param>
/// <param name="Done">Part that is done, 0 to 1.</param>
/// <param name="Since">How long it has been asked for.</param>
public sealed record JobProgress(bool Waits, double Done, TimeSpan Since)
{
    /// <summary>In a few words.</summary>
    public string Words =>
        Waits
            ? "Waiting for other work to end"
            : string.Create(CultureInfo.InvariantCulture, $"{100 * Done:0} % done after {Since.TotalSeconds:0} s");
}
