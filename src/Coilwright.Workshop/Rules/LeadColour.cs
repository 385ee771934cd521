namespace Coilwright.Workshop.Rules;

/// <summary>One lead of the shop's own colour table.</summary>
/// <param name="Coil">The coil's name in the recipe, or "*" for any.</param>
/// <param name="End">"start", "finish" or "ground".</param>
/// <param name="Colour">The colour as the shop says it.</param>
public sealed record LeadColour(string Coil, string End, string Colour);
