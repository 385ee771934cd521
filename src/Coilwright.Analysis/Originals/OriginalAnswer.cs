using Coilwright.Physics;

namespace Coilwright.Analysis.Originals;

/// <summary>One explanation of the readings.</summary>
/// <param name="Gauge">For example "AWG 42".</param>
/// <param name="Build">Film build, "single" and so on.</param>
/// <param name="Probability">Its share of all explanations, 0…1.</param>
/// <param name="Turns">Turns if it holds.</param>
/// <param name="BareDiameterM">Diameter without enamel if it holds, m.</param>
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

    /// <summary>Turns over all explanations.</summary>
    public required Estimate Turns { get; init; }

    /// <summary>Diameter without enamel over all explanations, m.</summary>
    public required Estimate BareDiameterM { get; init; }

    /// <summary>Diameter over the enamel over all explanations, m.</summary>
    public required Estimate OverallDiameterM { get; init; }

    /// <summary>Probability by gauge, 0…1.</summary>
    public required IReadOnlyDictionary<string, double> ByGauge { get; init; }

    /// <summary>Probability by film build, 0…1.</summary>
    public required IReadOnlyDictionary<string, double> ByBuild { get; init; }

    /// <summary>Probability by pole material, 0…1; empty where it was known.</summary>
    public required IReadOnlyDictionary<string, double> ByPoleMaterial { get; init; }

    /// <summary>The most telling first.</summary>
    public required IReadOnlyList<NextReading> NextReadings { get; init; }

    /// <summary>False when a search that matters did not come to rest.</summary>
    public required bool Converged { get; init; }

    /// <summary>True when it was stopped before every wire was weighed.</summary>
    public bool Stopped { get; init; }

    /// <summary>What speaks against the answer, in workshop words; empty when nothing.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
