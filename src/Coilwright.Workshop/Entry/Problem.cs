using System.Text.Json.Serialization;

namespace Coilwright.Workshop.Entry;

/// <summary>One mistake in what a person entered, in workshop words.</summary>
/// <param name="Field">Path of the field, for example "coils[0].winding.turns".</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Understood">How the entry was understood, or null if it was not.</param>
/// <param name="Allowed">What is allowed, for example "1 to 100,000".</param>
public sealed record Problem(string Field, string Message, string? Understood = null, string? Allowed = null)
{
    /// <summary>What the entry can mean, each text read as itself, when only the person can say which; null otherwise.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Readings { get; init; }
}

/// <summary>The outcome of reading something a person wrote: the value, or every problem at once.</summary>
public sealed record ReadOutcome<T>(T? Value, IReadOnlyList<Problem> Problems)
    where T : class
{
    public bool Ok => Value is not null && Problems.Count == 0;
}
