namespace Coilwright.Workshop.Polarity;

/// <summary>What becomes of hum when coils sound together.</summary>
public enum HumAnswer
{
    /// <summary>Every coil hums with the same sign.</summary>
    Adds,

    /// <summary>The two signs are present and much of it goes.</summary>
    Cancels,

    /// <summary>The two signs are present but one outweighs the other.</summary>
    CancelsInPart,
}

/// <summary>Whether coils that sound together are in phase, and what becomes of their hum.</summary>
/// <param name="InPhase">True when every string signal has the same sign; null when a pole is not stated.</param>
/// <param name="Hum">What becomes of hum.</param>
/// <param name="HumLevelDb">Hum left against the same coils adding, dB; 0 when all add, not below −120.</param>
public sealed record PhaseAnswer(bool? InPhase, HumAnswer Hum, double HumLevelDb)
{
    /// <summary>The answer as the shop says it.</summary>
    public string Words => $"{Strings}, {HumWords}";

    private string Strings =>
        InPhase switch
        {
            true => "in phase",
            false => "out of phase",
            null => "phase unknown (a pole is not stated)",
        };

    private string HumWords =>
        Hum switch
        {
            HumAnswer.Adds => "hum adds",
            HumAnswer.Cancels => "hum cancels",
            _ => "hum cancels in part",
        };
}
