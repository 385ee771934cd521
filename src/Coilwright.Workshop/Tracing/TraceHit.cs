namespace Coilwright.Workshop.Tracing;

/// <summary>One thing of the name asked for, and the pieces that hold of it.</summary>
/// <param name="Kind">"piece", "batch", "coil", "spool", "spool-lot", "winder", "magnet-lot", "part-lot", "basket", "bath-lot", "ink",
/// "customer", "recipe" or "set".</param>
/// <param name="Name">As the shop calls it.</param>
/// <param name="Words">What it is, in a line.</param>
/// <param name="Pieces">The pieces, each with its state: a recall list.</param>
public sealed record TraceHit(string Kind, string Name, string Words, IReadOnlyList<TracedState> Pieces)
{
    /// <summary>The recipe, the batch, or the batch of the coil; null for other kinds.</summary>
    public Guid? Id { get; init; }

    /// <summary>Tag of a coil; empty for other kinds.</summary>
    public string Tag { get; init; } = "";

    /// <summary>Coils of it that stand in no piece; empty for kinds that are no wire and no winder.</summary>
    public IReadOnlyList<LooseCoil> Loose { get; init; } = [];

    /// <summary>How what was asked for matched its name.</summary>
    public NameMatch Match { get; init; }
}

/// <summary>A coil that stands in no piece.</summary>
/// <param name="Code">Batch and tag.</param>
/// <param name="Recipe">Recipe and revision.</param>
public sealed record LooseCoil(string Code, string Recipe);

/// <summary>A piece in a list.</summary>
/// <param name="Serial">Its serial.</param>
/// <param name="Recipe">Recipe and revision.</param>
/// <param name="State">Where it is, in words.</param>
/// <param name="Customer">Reference of the customer it went to last; empty when it never left.</param>
/// <param name="Through">What of it comes from the thing asked for, for example a coil's tag.</param>
public sealed record TracedState(string Serial, string Recipe, string State, string Customer, string Through);
