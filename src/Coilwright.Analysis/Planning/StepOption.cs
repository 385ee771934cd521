namespace Coilwright.Analysis.Planning;

/// <summary>A station that can do a step.</summary>
/// <param name="Station">Place in <see cref="JobList.Stations"/>.</param>
/// <param name="TimeS">Time it takes there, s, above zero.</param>
public sealed record StepOption(int Station, double TimeS);
