namespace Coilwright.Papers.Cards;

/// <summary>The colour of one lead, as the shop itself wrote it down. There is no table of anybody's colours behind it.</summary>
/// <param name="Coil">Name of the coil.</param>
/// <param name="End">"start" or "finish".</param>
/// <param name="Colour">The shop's word, 1 to 30 signs.</param>
public sealed record LeadColour(string Coil, string End, string Colour);
