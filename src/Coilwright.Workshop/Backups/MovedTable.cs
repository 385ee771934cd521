namespace Coilwright.Workshop.Backups;

/// <summary>A table that was copied.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Rows">How many rows it has.</param>
/// <param name="Hash">SHA-256 of what is in them, in their order; the same in both databases.</param>
public sealed record MovedTable(string Name, long Rows, string Hash);
