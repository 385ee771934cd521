namespace Coilwright.Application.Listening;

/// <summary>What a person wants to hear; null takes what is usual, and says so.</summary>
/// <param name="StringNumber">1 for the string at the lowest x.</param>
/// <param name="PitchHz">Pitch to play, Hz.</param>
/// <param name="PluckM">Place of the pluck from the bridge, m.</param>
/// <param name="WidthM">Width of what plucks, m.</param>
/// <param name="DurationS">Length of the sound, s.</param>
public sealed record PluckQuestion(int? StringNumber, double? PitchHz, double? PluckM, double? WidthM, double? DurationS);
