using System.Text.Json.Nodes;

namespace Coilwright.Workshop.Interpretations;

/// <summary>How what stands in a field was understood.</summary>
/// <param name="Echo">For the person: "8,000 turns", "AWG 42, 0.0635 mm"; empty when there is nothing to say.</param>
/// <param name="Value">As a document holds it: a number, or a text with a point as the decimal sign; what was typed when it was not
/// understood.</param>
public sealed record Interpretation(string Echo, JsonNode? Value)
{
    /// <summary>What it can mean when the person must say which.</summary>
    public IReadOnlyList<string> Readings { get; init; } = [];
}
