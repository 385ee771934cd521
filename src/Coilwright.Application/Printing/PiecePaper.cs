using Coilwright.Papers.Sheets;

namespace Coilwright.Application.Printing;

/// <summary>A paper of a piece, or why it cannot be printed.</summary>
/// <param name="Sheet">The paper; null when there is none.</param>
/// <param name="Why">Why there is none, for people.</param>
/// <param name="ToDo">What to do first.</param>
public sealed record PiecePaper(Sheet? Sheet, string Why = "", string ToDo = "");
