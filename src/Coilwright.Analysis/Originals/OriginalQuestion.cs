using Coilwright.Physics;
using Coilwright.Physics.Wire;

namespace Coilwright.Analysis.Originals;

/// <summary>One reading taken on an original.</summary>
/// <param name="Quantity">dcResistance, inductance, capacitance, overallDiameter, bareDiameter, build, meanTurnLength, outerLength, outerWidth, wireMass, resistancePerLength or turns.</param>
/// <param name="Value">SI; a resistance at 20 °C.</param>
/// <param name="Half">Half of its 95 % interval, in the same unit.</param>
/// <param name="AtHz">Frequency of an inductance.</param>
public sealed record OriginalReading(string Quantity, double Value, double Half, double AtHz = 1000);

/// <summary>A wire that the original may have been wound from.</summary>
/// <param name="Gauge">Its name.</param>
/// <param name="Build">Film build or grade.</param>
/// <param name="Model">The wire, with the standard's limits.</param>
/// <param name="Prior">How likely before any reading, in parts of all; need not sum to 1.</param>
public sealed record WireHypothesis(string Gauge, string Build, WireModel Model, double Prior);

/// <summary>What the cores may be made of.</summary>
/// <param name="Material">Its name; empty when it was given.</param>
/// <param name="Model">The pickup with such cores.</param>
/// <param name="Prior">How likely before any reading.</param>
public sealed record CoreHypothesis(string Material, PickupModel Model, double Prior);

/// <summary>An original to identify. All coils are taken to be wound alike.</summary>
public sealed record OriginalQuestion
{
    public required IReadOnlyList<WireHypothesis> Wires { get; init; }
    public required IReadOnlyList<CoreHypothesis> Cores { get; init; }
    public required IReadOnlyList<OriginalReading> Readings { get; init; }

    /// <summary>Points drawn for each wire.</summary>
    public int Samples { get; init; } = 4096;
    public int Seed { get; init; } = 1;
}

/// <summary>One explanation of an original.</summary>
/// <param name="Gauge">Wire size.</param>
/// <param name="Build">Film build or grade.</param>
/// <param name="Probability">Given the readings and what is common.</param>
/// <param name="Turns">Of each coil.</param>
/// <param name="BareDiameterM">Of the wire.</param>
/// <param name="Fits">False when such a winding is thicker than the room on the bobbin.</param>
public sealed record Explanation(string Gauge, string Build, double Probability, Estimate Turns, Estimate BareDiameterM, bool Fits);

/// <summary>A reading that would help.</summary>
/// <param name="Quantity">What to read.</param>
/// <param name="Words">How, and to what uncertainty it was reckoned.</param>
/// <param name="InformationBits">What it is expected to tell about the wire, bits.</param>
public sealed record NextReading(string Quantity, string Words, double InformationBits);

/// <summary>What an original was made of.</summary>
public sealed record OriginalAnswer
{
    /// <summary>Most probable first; then those that would not fit.</summary>
    public required IReadOnlyList<Explanation> Explanations { get; init; }

    /// <summary>Probability by gauge, by build and by material of the cores.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyDictionary<string, double>> Shares { get; init; }

    /// <summary>Turns, bare and overall diameter, and build over all explanations, SI.</summary>
    public required IReadOnlyDictionary<string, Estimate> Quantities { get; init; }
    public required IReadOnlyList<NextReading> NextReadings { get; init; }

    /// <summary>False when the sampling leaves the probabilities uncertain by more than a few points.</summary>
    public required bool Converged { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }
}
