using Coilwright.Physics.Circuit;

namespace Coilwright.Application.Listening;

/// <summary>A pickup that a recording was made with, or shall sound like: a recipe of the shop, or a file.</summary>
/// <param name="RecipeId">The recipe; its newest revision is taken. Null where a file is given.</param>
/// <param name="LoadKey">Key of a usual load, or <see cref="ListenChoice.Unloaded"/>.</param>
/// <param name="FileName">What the file is called; empty without one.</param>
/// <param name="FileText">A recipe, a measured pickup or a whole circuit; empty without one. It goes before the recipe.</param>
public sealed record PickupOfSound(Guid? RecipeId, string LoadKey, string FileName, string FileText)
{
    /// <summary>The load; null for a key that is not known.</summary>
    internal LoadCircuit? Load => new ListenChoice(Guid.Empty, LoadKey).Load;
}

/// <summary>A recording to hear as another pickup would have given it.</summary>
/// <param name="From">The pickup of the recording.</param>
/// <param name="To">The pickup wanted.</param>
/// <param name="Wave">The recording, a WAV file.</param>
/// <param name="Matched">True to bring both to one level, false to keep what one has more than the other.</param>
public sealed record RevoiceQuestion(PickupOfSound From, PickupOfSound To, byte[] Wave, bool Matched);
