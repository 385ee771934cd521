using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Batches.Events;

/// <summary>It was found out what a coil really had: it was taken apart, or its joint was mended.</summary>
public sealed record CauseFound : BatchEvent
{
    /// <summary>Key of the cause; "none" where nothing was wrong with it.</summary>
    public required string Cause { get; init; }
    public string Note { get; init; } = "";

    public override string Sentence
    {
        get
        {
            string note = Note.Length > 0 ? $": {Note}" : "";
            return $"{Tag} really had {KeyLabels.Of(Cause)}{note}";
        }
    }

    internal override bool IsSaidBy(BatchEventEntry said) => Cause == CauseNames.KeyOf(said.Choice) && Note == said.Note.Trim();
}
