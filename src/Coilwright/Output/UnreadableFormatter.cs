using Coilwright.Workshop.Entry;

namespace Coilwright.Output;

/// <summary>Records of a list that cannot be shown, told beside the list.</summary>
internal static class UnreadableFormatter
{
    /// <summary>Tells each with why and what to do.</summary>
    /// <param name="messages">Where messages go.</param>
    /// <param name="records">The records.</param>
    public static async Task WriteAsync(TextWriter messages, IEnumerable<UnreadableRecord> records)
    {
        foreach (UnreadableRecord one in records)
        {
            await messages.WriteLineAsync($"{one.Name} cannot be shown: {one.Why}. What to do: {one.ToDo}.").ConfigureAwait(false);
        }
    }
}
