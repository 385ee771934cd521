using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop;

/// <summary>A batch as it stands.</summary>
/// <param name="Batch">The record.</param>
/// <param name="RecipeName">Name of its recipe.</param>
/// <param name="RevisionLetter">Letter of its revision.</param>
/// <param name="Coils">Coils begun, in order of first entry.</param>
/// <param name="NextTag">The tag proposed for the next coil, or null when the batch is full or was closed.</param>
/// <param name="RoomC">Room temperature in force, or null when none was entered in the last two hours.</param>
public sealed record BatchStatus(
    BatchRecord Batch,
    string RecipeName,
    string RevisionLetter,
    IReadOnlyList<CoilDossier> Coils,
    string? NextTag,
    RoomTemperature? RoomC
)
{
    /// <summary>
    /// What each coil is held against, resistance at 20 °C: the recipe's targets, or the forecast where it sets none; with its origin.
    /// </summary>
    public required VerdictLimits Limits { get; init; }

    /// <summary>What is asked when one of these tags is entered again.</summary>
    public IReadOnlyList<SpoolQuestion> Questions { get; init; } = [];

    /// <summary>
    /// What is off for the whole batch and is no coil's fault, each with its evidence and quickest check; empty when nothing is.
    /// </summary>
    public IReadOnlyList<BatchRemark> Remarks { get; init; } = [];

    /// <summary>What an undo would take back: "C-014", "the correction of C-003"; empty when there is nothing.</summary>
    public string UndoWords { get; init; } = "";

    /// <summary>Coils wanted: the batch's number and what was asked for since.</summary>
    public int Wanted { get; init; } = Batch.Quantity;

    /// <summary>Tags of coils beyond that number; they are kept, and marked.</summary>
    public IReadOnlySet<string> Beyond => BatchNumber.Beyond(Batch, Wanted, Coils.Select(coil => coil.Tag));

    /// <summary>True when every coil that is wanted was entered.</summary>
    public bool IsDone => BatchNumber.IsDone(Coils.Count, Beyond.Count, Wanted);

    /// <summary>Why it ended before its number; null while it did not.</summary>
    public Closed? Closing { get; init; }

    /// <summary>Where it stands.</summary>
    public BatchState State => BatchNumber.State(Coils.Count, Beyond.Count, Wanted, Closing);

    /// <summary>How far it is: "24 of 24 done", "20 of 24", how many are beyond the number, and why it was closed.</summary>
    public string CountWords => BatchNumber.Words(Coils.Count, Beyond.Count, Wanted, Closing);
}

/// <summary>What a person enters for one coil, as typed.</summary>
public sealed record CoilEntry
{
    /// <summary>Made by the client; sending it twice records it once.</summary>
    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }
    public required string Tag { get; init; }

    /// <summary>
    /// True when the tag was proposed and nobody typed or scanned it: then it is a new coil. Where another bench has used the tag
    /// meanwhile, the person is asked, and nothing is stored.
    /// </summary>
    public bool Proposed { get; init; }

    /// <summary>Resistance as typed: "7.43 k", "7k43", "7430", "open".</summary>
    public required string Resistance { get; init; }

    /// <summary>Temperature as typed; empty takes the room's.</summary>
    public string Temperature { get; init; } = "";
    public string Inductance { get; init; } = "";
    public string InductanceAt { get; init; } = "";
    public string Turns { get; init; } = "";
    public string Instrument { get; init; } = "";
    public string Person { get; init; } = "";

    /// <summary>For a tag that is entered again after its undo while another spool is on: "same" or "new" coil.</summary>
    /// <remarks>Empty when nobody was asked, and then it is the same.</remarks>
    public string Coil { get; init; } = "";

    /// <summary>Set to replace an earlier reading; needs a reason.</summary>
    public Guid? Supersedes { get; init; }
    public string Reason { get; init; } = "";
}

/// <summary>What came of an entry: every problem and nothing stored, or the coil as it now stands.</summary>
/// <param name="Problems">Empty when stored.</param>
/// <param name="Coil">The coil after the entry; null when not stored.</param>
/// <param name="Echo">How the entry was understood, for example "7.43 kΩ at 23.5 °C → 7.332 kΩ at 20 °C".</param>
/// <param name="Duplicate">True when this id had been stored before.</param>
/// <param name="NextTag">Tag proposed next.</param>
/// <param name="CountWords">How far the batch is, "24 of 24 done"; empty when not stored.</param>
public sealed record CoilEntryOutcome(
    IReadOnlyList<Problem> Problems,
    CoilDossier? Coil,
    string Echo,
    bool Duplicate,
    string? NextTag,
    string CountWords = ""
)
{
    /// <summary>Rules of the run's chart that this coil breaks; empty when the run is steady.</summary>
    public IReadOnlyList<string> Signals { get; init; } = [];

    /// <summary>True when the id was there already with something else in it.</summary>
    public bool IsConflict => SentAgain.IsAmong(Problems);
}
