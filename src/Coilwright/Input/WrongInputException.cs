using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>What a person handed in cannot be used; carries every problem at once.</summary>
public sealed class WrongInputException(string source, IReadOnlyList<Problem> problems)
    : Exception($"{source}: {problems.Count} problem(s)")
{
    /// <summary>The file or option the problems are in.</summary>
    public override string? Source { get; set; } = source;

    /// <summary>Every problem found.</summary>
    public IReadOnlyList<Problem> Problems { get; } = problems;

    /// <summary>A single problem with an option.</summary>
    public static WrongInputException About(string option, string message, string? allowed = null) =>
        new("", [new Problem(option, message, Allowed: allowed)]);
}
