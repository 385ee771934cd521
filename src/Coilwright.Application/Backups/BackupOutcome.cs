using Coilwright.Workshop.Backups;

namespace Coilwright.Application.Backups;

/// <summary>What came of a backup.</summary>
/// <param name="Written">The backup, read back.</param>
/// <param name="Removed">Older ones that were removed for it.</param>
/// <param name="Complaint">What went wrong after it was written: an old one that resisted; empty when nothing did.</param>
public sealed record BackupOutcome(BackupFile Written, IReadOnlyList<BackupFile> Removed, string Complaint);

/// <summary>A folder for backups.</summary>
/// <param name="Path">Where it is.</param>
/// <param name="IsElsewhere">True when it lies on another volume than the shop.</param>
public sealed record BackupFolder(string Path, bool IsElsewhere);

/// <summary>How a shop stands with its backups.</summary>
/// <param name="Backups">Of all folders, newest first, then those that cannot be read.</param>
/// <param name="Warnings">What a person should know; empty when all is well.</param>
/// <param name="Failures">Why the last try failed, one for each folder; empty when it did not.</param>
public sealed record BackupStatus(IReadOnlyList<BackupFile> Backups, IReadOnlyList<string> Warnings, IReadOnlyList<string> Failures);
