using System.Collections.Frozen;
using System.Reflection;
using System.Text.Json.Serialization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Workshop.Pieces.Events;

/// <summary>
/// One event in the life of a piece. Never edited: what takes it back or mends its time is a new event that names it. Each kind is a record
/// of its own, with what it says, its sentence and what may undo it.
/// </summary>
/// <remarks>
/// A new kind is a sealed record beside these and its name in the list below. Files keep it under that name, and its own properties by
/// theirs: neither is ever changed.
/// </remarks>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(StepBegun), nameof(StepBegun))]
[JsonDerivedType(typeof(StepEnded), nameof(StepEnded))]
[JsonDerivedType(typeof(Held), nameof(Held))]
[JsonDerivedType(typeof(Lifted), nameof(Lifted))]
[JsonDerivedType(typeof(Tested), nameof(Tested))]
[JsonDerivedType(typeof(MadeGolden), nameof(MadeGolden))]
[JsonDerivedType(typeof(Reserved), nameof(Reserved))]
[JsonDerivedType(typeof(Shipped), nameof(Shipped))]
[JsonDerivedType(typeof(Returned), nameof(Returned))]
[JsonDerivedType(typeof(Examined), nameof(Examined))]
[JsonDerivedType(typeof(PartOut), nameof(PartOut))]
[JsonDerivedType(typeof(Repaired), nameof(Repaired))]
[JsonDerivedType(typeof(Scrapped), nameof(Scrapped))]
[JsonDerivedType(typeof(MagnetsCharged), "Charged")]
[JsonDerivedType(typeof(JoinedSet), nameof(JoinedSet))]
[JsonDerivedType(typeof(LeftSet), nameof(LeftSet))]
[JsonDerivedType(typeof(Noted), nameof(Noted))]
[JsonDerivedType(typeof(Undone), nameof(Undone))]
[JsonDerivedType(typeof(ToldLate), nameof(ToldLate))]
[JsonDerivedType(typeof(ClockSaidRight), nameof(ClockSaidRight))]
[JsonDerivedType(typeof(TimeMended), nameof(TimeMended))]
public abstract record PieceEvent
{
    private static readonly FrozenDictionary<Type, string> s_kinds = typeof(PieceEvent)
        .GetCustomAttributes<JsonDerivedTypeAttribute>(inherit: false)
        .ToFrozenDictionary(kind => kind.DerivedType, kind => (string)kind.TypeDiscriminator!);

    /// <summary>Client-made id; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }
    public required Guid PieceId { get; init; }
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>Name of its kind, in files and formats.</summary>
    [JsonIgnore] // the reader and the writer name the kind by themselves
    public string Kind => s_kinds[GetType()];

    /// <summary>Every kind there is, by name.</summary>
    public static IReadOnlyCollection<string> Kinds => s_kinds.Values;

    /// <summary>Name of a kind, in files and formats.</summary>
    public static string KindOf<T>()
        where T : PieceEvent => s_kinds[typeof(T)];

    /// <summary>The event in the fewest words, without what it went into or whom it went to.</summary>
    public abstract string Short { get; }

    /// <summary>The event in a line, the same on screens, papers and in formats.</summary>
    public virtual string Sentence(TracedPiece piece) => Short;

    /// <summary>False for what stands behind the line of another event.</summary>
    public virtual bool HasLine => true;

    /// <summary>What it says of the magnets' charge; null when it says nothing.</summary>
    public virtual MagnetCharge? ChargeSaid => null;

    /// <summary>What it says was done to the piece, for the report on a repair; empty for what mends nothing.</summary>
    public virtual string WorkDone => "";

    /// <summary>What it cost, as the shop writes it; empty where nothing was said.</summary>
    public virtual string CostSaid => "";

    /// <summary>Text for the customer; empty where there is none.</summary>
    public virtual string AnswerSaid => "";

    /// <summary>Values that the event itself says, as formats list them among the readings.</summary>
    public virtual IReadOnlyList<PieceReadingRecord> Values => [];

    /// <summary>True when the next event, of the same moment, was entered together with this one.</summary>
    internal virtual bool IsOneEntryWith(PieceEvent next, PieceEventLog history) => false;

    /// <summary>The entry that begins with this event in a few words, for a button: "marking done", "final test".</summary>
    /// <param name="rest">Events entered together with it.</param>
    internal virtual string EntryWords(IReadOnlyList<PieceEvent> rest) => Short;

    /// <summary>Why it may not be taken back while it is the newest; null when it may.</summary>
    internal virtual Problem? UndoRefusal(UndoGround ground) => null;

    /// <summary>The words with what leads to them; empty without words.</summary>
    private protected static string After(string lead, string words) => words.Length > 0 ? lead + words : "";
}
