using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>A pinned answer, or the recipe as it stands.</summary>
/// <param name="Key">Its key; empty for the recipe as it stands.</param>
/// <param name="Words">What to call it.</param>
/// <param name="Json">Its document.</param>
/// <param name="Solution">The answer; null for the recipe as it stands.</param>
public sealed record PinnedDesign(string Key, string Words, string Json, Solution? Solution);
