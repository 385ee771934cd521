namespace Coilwright;

/// <summary>What every command works with: where answers and messages go, and the clock.</summary>
/// <param name="Output">Answers.</param>
/// <param name="Error">Messages.</param>
/// <param name="Time">The clock.</param>
public sealed record CommandContext(TextWriter Output, TextWriter Error, TimeProvider Time)
{
    /// <summary>The hour at the shop, for papers and lists.</summary>
    public DateTimeOffset LocalNow => Time.GetLocalNow();
}
