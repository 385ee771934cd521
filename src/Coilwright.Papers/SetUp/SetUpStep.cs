namespace Coilwright.Papers.SetUp;

/// <summary>One step of the set-up sheet, the same on the screen, in print and as PDF.</summary>
/// <param name="Name">What is done.</param>
/// <param name="Pairs">Short figures, set side by side where there is room.</param>
/// <param name="Terms">What is said in a line each.</param>
/// <param name="Caution">What can hurt in it; empty for nothing.</param>
public sealed record SetUpStep(
    string Name,
    IReadOnlyList<(string Term, string Meaning)> Pairs,
    IReadOnlyList<(string Term, string Meaning)> Terms,
    string Caution = ""
);
