using Coilwright.Physics;

namespace Coilwright.Analysis.Originals;

/// <summary>One explanation of the readings.</summary>
public sealed record OriginalExplanation(string Gauge, string Build, double Probability, Estimate Turns, Estimate BareDiameterM);

/// <summary>What a reading not yet taken would tell of wire, film, poles and turns.</summary>
/// <param name="Quantity">What to read.</param>
/// <param name="Relative">With what 95 % interval it is assumed to be read.</param>
/// <param name="InformationBits">Expected information, bits.</param>
public sealed record NextReading(OriginalQuantity Quantity, double Relative, double InformationBits);

/// <summary>What an original was made of.</summary>
public sealed record OriginalAnswer
{
    /// <summary>The likeliest first; their probabilities sum to 1.</summary>
    public required IReadOnlyList<OriginalExplanation> Explanations { get; init; }

    /// <summary>Turns, bare and overall diameter over all explanations.</summary>
    public required Estimate Turns { get; init; }
    public required Estimate BareDiameterM { get; init; }
    public required Estimate OverallDiameterM { get; init; }

    /// <summary>Probability by gauge, by film build and by pole material; the last empty where it was known.</summary>
    public required IReadOnlyDictionary<string, double> ByGauge { get; init; }
    public required IReadOnlyDictionary<string, double> ByBuild { get; init; }
    public required IReadOnlyDictionary<string, double> ByPoleMaterial { get; init; }

    /// <summary>The most telling first.</summary>
    public required IReadOnlyList<NextReading> NextReadings { get; init; }

    /// <summary>False when a search that matters did not come to rest.</summary>
    public required bool Converged { get; init; }

    /// <summary>True when it was stopped before every wire was weighed.</summary>
    public bool Stopped { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }
}
