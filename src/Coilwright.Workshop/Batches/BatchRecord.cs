namespace Coilwright.Workshop.Batches;

/// <summary>One production run of one recipe revision; stays on that revision.</summary>
/// <param name="Id">Client-made id.</param>
/// <param name="Name">As the shop calls it, for example "H-12".</param>
/// <param name="RecipeId">The recipe.</param>
/// <param name="RevisionNumber">The released revision it was begun on.</param>
/// <param name="CoilName">Which of the recipe's coils is wound in this batch.</param>
/// <param name="Quantity">Coils wanted, 1…10,000.</param>
/// <param name="TagPrefix">Tags are prefix + three digits: "C-" gives C-001.</param>
/// <param name="Spool">Label of the spool, or empty.</param>
/// <param name="Machine">Name of the winder, or empty.</param>
/// <param name="Person">Who began it.</param>
/// <param name="BegunUtc">When.</param>
public sealed record BatchRecord(
    Guid Id,
    string Name,
    Guid RecipeId,
    int RevisionNumber,
    string CoilName,
    int Quantity,
    string TagPrefix,
    string Spool,
    string Machine,
    string Person,
    DateTimeOffset BegunUtc
);
