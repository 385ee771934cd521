namespace Coilwright.Application.Measuring;

/// <summary>A resonance as typed.</summary>
/// <param name="Capacitor">The capacitor added; empty for the bare pickup.</param>
/// <param name="Frequency">Where the resonance was found.</param>
public sealed record TypedPeak(string Capacitor, string Frequency);

/// <summary>Resonances with known capacitors, and what else was read, as typed; what is empty was not said.</summary>
/// <param name="Peaks">Two or more.</param>
public sealed record ResonanceQuestion(IReadOnlyList<TypedPeak> Peaks)
{
    /// <summary>How well the capacitors are known.</summary>
    public string Tolerance { get; init; } = "";

    /// <summary>The winding's DC resistance.</summary>
    public string Resistance { get; init; } = "";

    /// <summary>An inductance by meter.</summary>
    public string Inductance { get; init; } = "";

    /// <summary>Frequency of that meter.</summary>
    public string At { get; init; } = "";
}
