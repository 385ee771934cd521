using System.Collections.Frozen;
using System.Globalization;
using System.Reflection;
using System.Text.Json.Serialization;

namespace Coilwright.Workshop.Batches.Events;

/// <summary>
/// One event of a batch or of a coil while it is wound, besides its readings. Never edited: an undo is a new event that names the one it
/// takes back. Each kind is a record of its own.
/// </summary>
/// <remarks>
/// A new kind is a sealed record beside these and its name in the list below. Files keep it under that name, and its own properties by
/// theirs: neither is ever changed.
/// </remarks>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Begun), nameof(Begun))]
[JsonDerivedType(typeof(Paused), nameof(Paused))]
[JsonDerivedType(typeof(Broken), nameof(Broken))]
[JsonDerivedType(typeof(Resumed), nameof(Resumed))]
[JsonDerivedType(typeof(Spliced), nameof(Spliced))]
[JsonDerivedType(typeof(FinishedLow), nameof(FinishedLow))]
[JsonDerivedType(typeof(Scrapped), nameof(Scrapped))]
[JsonDerivedType(typeof(SpoolTaken), nameof(SpoolTaken))]
[JsonDerivedType(typeof(Released), nameof(Released))]
[JsonDerivedType(typeof(MoreWanted), nameof(MoreWanted))]
[JsonDerivedType(typeof(SignalAnswered), nameof(SignalAnswered))]
[JsonDerivedType(typeof(CauseFound), nameof(CauseFound))]
[JsonDerivedType(typeof(Closed), nameof(Closed))]
[JsonDerivedType(typeof(Undone), nameof(Undone))]
public abstract record BatchEvent
{
    private static readonly FrozenDictionary<Type, string> s_kinds = typeof(BatchEvent)
        .GetCustomAttributes<JsonDerivedTypeAttribute>(inherit: false)
        .ToFrozenDictionary(kind => kind.DerivedType, kind => (string)kind.TypeDiscriminator!);

    /// <summary>Client-made id; sent twice it is kept once.</summary>
    public required Guid Id { get; init; }
    public required Guid BatchId { get; init; }

    /// <summary>The coil's tag; empty for an event of the whole batch.</summary>
    public string Tag { get; init; } = "";
    public string Person { get; init; } = "";
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>Name of its kind, in files.</summary>
    [JsonIgnore] // the reader and the writer name the kind by themselves
    public string Kind => s_kinds[GetType()];

    /// <summary>Every kind there is, by name.</summary>
    public static IReadOnlyCollection<string> Kinds => s_kinds.Values;

    /// <summary>The event in workshop words.</summary>
    public abstract string Sentence { get; }

    /// <summary>True when it was made of these words. What was left out was filled in from how things stood then.</summary>
    internal virtual bool IsSaidBy(BatchEventEntry said) => true;

    /// <summary>A number of turns or coils in words; a question mark when nobody counted.</summary>
    private protected static string Count(double? value) =>
        value is { } count ? count.ToString("#,##0", CultureInfo.InvariantCulture) : "?";
}
