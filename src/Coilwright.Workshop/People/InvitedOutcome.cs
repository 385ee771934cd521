using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.People;

/// <summary>What came of making an account or setting a password.</summary>
/// <param name="Problems">What is wrong; empty when it was done.</param>
/// <param name="Password">A password that was made up, to be told once; empty when the person chose it.</param>
public sealed record InvitedOutcome(IReadOnlyList<Problem> Problems, string Password);

/// <summary>What came of signing in, or of making a token.</summary>
/// <param name="Problems">What is wrong; empty when it was done.</param>
/// <param name="Key">The key that the browser or program keeps; empty when there is none.</param>
public sealed record KeyOutcome(IReadOnlyList<Problem> Problems, string Key)
{
    /// <summary>It was refused.</summary>
    public static KeyOutcome Refused(params IReadOnlyList<Problem> problems) => new(problems, "");
}
