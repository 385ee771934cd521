namespace Coilwright.Papers.Cards;

/// <summary>How a revision stands in the shop's book, for its card.</summary>
/// <param name="State">"draft" or "released"; empty when the recipe stands in no book.</param>
/// <param name="ChangeReason">Why it differs from the one before; empty for the first.</param>
/// <param name="Person">Who released it, or wrote the draft; empty when not known.</param>
public sealed record RecipeStatus(string State = "", string ChangeReason = "", string Person = "");
