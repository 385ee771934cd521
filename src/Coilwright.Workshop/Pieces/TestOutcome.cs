namespace Coilwright.Workshop.Pieces;

/// <summary>One check of the final test.</summary>
/// <param name="What">What was checked.</param>
/// <param name="Result">How it came out.</param>
/// <param name="Words">The same for people.</param>
/// <param name="Deviation">Deviation from the golden piece or the nominal, a part of it; null where there is none.</param>
public sealed record TestOutcome(string What, TestResult Result, string Words, double? Deviation = null);
