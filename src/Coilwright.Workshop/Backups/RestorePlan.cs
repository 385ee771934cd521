namespace Coilwright.Workshop.Backups;

/// <summary>What restoring a backup would do; nothing was done yet.</summary>
/// <param name="Backup">The backup's file.</param>
/// <param name="Target">The shop's file to be.</param>
/// <param name="Manifest">What the backup says of itself; its contents were read and have the hash that stands there.</param>
/// <param name="IsTaken">True when a file stands at the target.</param>
/// <param name="Present">What the file at the target holds; null when there is none, or it cannot be read.</param>
/// <param name="PresentComplaint">Why it cannot be read; empty when it can.</param>
/// <param name="Beside">Write-ahead log and its index that lie at the target: they would be put aside.</param>
public sealed record RestorePlan(
    string Backup,
    string Target,
    BackupManifest Manifest,
    bool IsTaken,
    ShopContents? Present,
    string PresentComplaint,
    IReadOnlyList<string> Beside
);
