namespace Coilwright.Analysis.Planning;

/// <summary>An opening of a station.</summary>
/// <param name="FromS">When it begins, s from the start of the plan.</param>
/// <param name="ToS">When it ends, after its beginning.</param>
/// <param name="EveryS">Time after which it comes again, for ever, s; null for an opening that comes once.</param>
public readonly record struct OpenHours(double FromS, double ToS, double? EveryS = null);
