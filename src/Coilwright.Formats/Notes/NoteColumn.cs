using Coilwright.Workshop.Notes;

namespace Coilwright.Formats.Notes;

/// <summary>A column of somebody's notes, and what it is read as.</summary>
/// <param name="Header">Its heading, as it stands.</param>
/// <param name="Role">What it is read as; null for left aside.</param>
/// <param name="Unit">Unit of a bare number in it; empty where none belongs.</param>
/// <param name="UnitFrom">Where the unit comes from, in words; empty when it stands in the heading or was said.</param>
/// <param name="Examples">Its first cells that are not empty.</param>
public sealed record NoteColumn(string Header, NoteRole? Role, string Unit, string UnitFrom, IReadOnlyList<string> Examples);
