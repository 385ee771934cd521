namespace Coilwright.Papers.Labels;

/// <summary>A label for one piece, basket or mix.</summary>
/// <param name="Code">What the codes say: the serial or tag. ASCII, 1 to 40 signs.</param>
/// <param name="Title">The largest line, most often the same.</param>
/// <param name="Lines">Up to three lines more.</param>
/// <param name="HasMagnets">True where what it is on has magnets, of which it then warns.</param>
public sealed record PieceLabel(string Code, string Title, IReadOnlyList<string> Lines, bool HasMagnets = false);
