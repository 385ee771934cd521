namespace Coilwright.Analysis.Planning;

/// <summary>Time to set a station up between two steps that follow each other on it.</summary>
/// <param name="Station">Place in <see cref="JobList.Stations"/>.</param>
/// <param name="From">Family of the step before.</param>
/// <param name="To">Family of the step after.</param>
/// <param name="TimeS">Time, s, zero or more.</param>
public sealed record SetUpTime(int Station, string From, string To, double TimeS);
