namespace Coilwright.Workshop.Pieces;

/// <summary>
/// What a person enters of a whole piece at the final test or when it comes back, as typed; what was not measured is empty.
/// </summary>
public sealed record TestEntry
{
    /// <summary>Made by the client; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }
    public required string Serial { get; init; }

    /// <summary>"7.43 k", or "open".</summary>
    public string Resistance { get; init; } = "";

    /// <summary>Temperature of the piece; empty takes the room's.</summary>
    public string Temperature { get; init; } = "";
    public string Inductance { get; init; } = "";

    /// <summary>Frequency of the inductance; 1 kHz unless typed.</summary>
    public string InductanceAt { get; init; } = "";

    /// <summary>Q, a plain number.</summary>
    public string Quality { get; init; } = "";

    /// <summary>Frequency of Q or of the AC resistance; 1 kHz unless typed.</summary>
    public string QualityAt { get; init; } = "";
    public string AcResistance { get; init; } = "";

    /// <summary>Measured peak on the usual load.</summary>
    public string Peak { get; init; } = "";

    /// <summary>"up" or "down".</summary>
    public string Swing { get; init; } = "";

    /// <summary>Field over each pole, in order, with spaces between; a bare number is gauss.</summary>
    public string Poles { get; init; } = "";

    /// <summary>Distance of the probe from the poles; 1 mm unless typed.</summary>
    public string Jig { get; init; } = "";

    /// <summary>What the eye found.</summary>
    public string Flaws { get; init; } = "";
    public string Instrument { get; init; } = "";
    public string Person { get; init; } = "";

    /// <summary>True to keep this piece as the shop's measure.</summary>
    public bool Golden { get; init; }
}
