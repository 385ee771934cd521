using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Notes;

/// <summary>One coil of somebody's old notes.</summary>
/// <param name="Line">Line of the file, from 1.</param>
/// <param name="Cells">What stands there, by the key of its role.</param>
/// <param name="TimeUtc">When it was read; null when the notes do not say.</param>
public sealed record CoilNote(int Line, IReadOnlyDictionary<string, NoteCell> Cells, DateTimeOffset? TimeUtc)
{
    /// <summary>What stands in the column of a role; empty where nothing does.</summary>
    public string Written(NoteRole role) => Cells.GetValueOrDefault(role.Key)?.Written ?? "";

    /// <summary>The same with its unit, as a person would type it.</summary>
    public string Typed(NoteRole role) => Cells.GetValueOrDefault(role.Key)?.Typed ?? "";
}

/// <summary>A cell of notes.</summary>
/// <param name="Column">Heading of its column.</param>
/// <param name="Written">Exactly as it stands.</param>
/// <param name="Typed">With a point and with the unit of its column, as the one reader of quantities takes it.</param>
public sealed record NoteCell(string Column, string Written, string Typed);

/// <summary>What came of notes: every problem and nothing stored, or how many coils.</summary>
/// <param name="Problems">Empty when they can be, or were, kept.</param>
/// <param name="Coils">Coils that are new.</param>
/// <param name="AlreadyThere">Coils that the same notes brought in before.</param>
/// <param name="Notes">What is no fault and worth knowing.</param>
public sealed record NoteOutcome(IReadOnlyList<Problem> Problems, int Coils, int AlreadyThere, IReadOnlyList<string> Notes);
