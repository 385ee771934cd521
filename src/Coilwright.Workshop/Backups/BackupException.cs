namespace Coilwright.Workshop.Backups;

/// <summary>A backup could not be made, read or removed; the message is for people, and nothing half-written was left.</summary>
public sealed class BackupException(string message, Exception? cause = null) : Exception(message, cause);
