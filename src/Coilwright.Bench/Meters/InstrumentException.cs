namespace Coilwright.Bench.Meters;

/// <summary>What went wrong between here and an instrument.</summary>
public enum InstrumentTrouble
{
    /// <summary>Nothing answers there, or the device is not there or not ours to open.</summary>
    CannotOpen,

    /// <summary>The connection was good and ended.</summary>
    Lost,

    /// <summary>Connected, and no answer came in time.</summary>
    Silent,

    /// <summary>An answer came that is no reading.</summary>
    Nonsense,

    /// <summary>A reading of another kind, or in a unit that nobody named.</summary>
    WrongUnit,

    /// <summary>Readings came and never stood still.</summary>
    Moving,
}

/// <summary>An instrument that does not give what it was asked for, in workshop words.</summary>
/// <param name="trouble">What kind of trouble.</param>
/// <param name="message">What happened and what to look at.</param>
/// <param name="raw">What came, or nothing.</param>
public sealed class InstrumentException(InstrumentTrouble trouble, string message, string raw = "") : Exception(message)
{
    /// <summary>What kind of trouble.</summary>
    public InstrumentTrouble Trouble => trouble;

    /// <summary>What came, as it came; empty when nothing did.</summary>
    public string Raw => raw;
}
