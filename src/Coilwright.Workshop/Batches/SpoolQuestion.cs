namespace Coilwright.Workshop.Batches;

/// <summary>What is asked once when a tag is entered again after its undo and another spool has been put on in between.</summary>
/// <param name="Tag">The tag.</param>
/// <param name="SameSpool">Label of the spool that the coil undone was wound from; empty when none was named.</param>
/// <param name="NewSpool">Label of the spool that is on now.</param>
public sealed record SpoolQuestion(string Tag, string SameSpool, string NewSpool)
{
    /// <summary>Answer of <see cref="CoilEntry.Coil"/>: the coil that was read before, wound from the spool before.</summary>
    public const string Same = "same";

    /// <summary>Answer of <see cref="CoilEntry.Coil"/>: another coil under the same tag, wound from the spool that is on.</summary>
    public const string New = "new";

    /// <summary>The question in words.</summary>
    public string Words => $"{Tag} was undone, and spool {NewSpool} put on since. Which coil is it?";

    /// <summary>The first answer in words.</summary>
    public string SameWords => $"same coil, from {(SameSpool.Length > 0 ? SameSpool : "the spool before")}";

    /// <summary>The second answer in words.</summary>
    public string NewWords => $"new coil, from {NewSpool}";
}
