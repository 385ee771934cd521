namespace Coilwright.Workshop.Batches;

/// <summary>Where a coil came from, as it was when the coil was first entered. A correction or an undo made later moves nothing.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="WoundUtc">When it was first entered.</param>
/// <param name="Spool">Label of the spool it was wound from; empty when none was named.</param>
/// <param name="Machine">Name of the winder; empty when none was named.</param>
public sealed record CoilOrigin(string Tag, DateTimeOffset WoundUtc, string Spool, string Machine)
{
    /// <summary>
    /// Label of the spool that was on when the tag was entered again after its undo and nobody said whether it is the same coil.
    /// </summary>
    /// <remarks>Empty when nothing is in doubt.</remarks>
    public string OtherSpool { get; init; } = "";

    /// <summary>What to know about the spool; empty when nothing is in doubt.</summary>
    public string Doubt =>
        OtherSpool.Length == 0
            ? ""
            : $"taken for the same coil as before its undo; spool {OtherSpool} was on when it was entered again, and nobody said which";
}
