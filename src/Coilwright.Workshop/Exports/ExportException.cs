namespace Coilwright.Workshop.Exports;

/// <summary>An export cannot be written or a shop not be filled here; nothing half-written is left. The message is for people.</summary>
public sealed class ExportException(string message, Exception? cause = null) : IOException(message, cause);
