namespace Coilwright.Workshop.Entry;

/// <summary>
/// A stored record that cannot be shown, and what to do about it. A list catches it by <see cref="RecordStatus"/>; asked for by itself it
/// is an answer in words.
/// </summary>
public sealed class UnreadableRecordException : Exception
{
    public UnreadableRecordException(string why, string toDo)
        : base(why) => ToDo = toDo;

    public UnreadableRecordException() { }

    public UnreadableRecordException(string message)
        : base(message) { }

    public UnreadableRecordException(string message, Exception innerException)
        : base(message, innerException) { }

    /// <summary>What to do about it.</summary>
    public string ToDo { get; } = "";
}
