namespace Coilwright.Workshop.Sets;

/// <summary>A place of a set as a person enters it.</summary>
/// <param name="Name">neck, middle, bridge, or the shop's own word.</param>
/// <param name="Of">The recipe whose pieces may take it, or the serial of a piece.</param>
/// <param name="Offset">By how much its output is meant to lie above the others', for example "+1.5 dB"; empty for none.</param>
public sealed record SetPlace(string Name, string Of, string Offset = "");
