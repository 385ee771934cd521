namespace Coilwright.Workshop.Backups;

/// <summary>What a backup says of itself; it is written into it, and read back from it before the backup gets its name.</summary>
/// <param name="Program">Version of the program that made it.</param>
/// <param name="TimeUtc">When it was begun.</param>
/// <param name="Shop">What it holds.</param>
/// <param name="Bytes">Length of the shop's file in it, bytes.</param>
/// <param name="Sha256">SHA-256 of that file, 64 hexadecimal digits.</param>
public sealed record BackupManifest(string Program, DateTimeOffset TimeUtc, ShopContents Shop, long Bytes, string Sha256);

/// <summary>A backup as it lies in a folder.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Bytes">Its size, bytes.</param>
/// <param name="Manifest">What it says of itself; null when that cannot be read.</param>
/// <param name="Complaint">Why it cannot be read; empty when it can.</param>
public sealed record BackupFile(string Path, long Bytes, BackupManifest? Manifest, string Complaint);
