using Coilwright.Analysis.Solving;

namespace Coilwright.Workshop.Solving;

/// <summary>How near a search came to one want, when nothing meets them all.</summary>
/// <param name="Want">The want.</param>
/// <param name="Changes">What the nearest differs in from the recipe asked about.</param>
/// <param name="Values">Its quantities by name, as the search reads them.</param>
public sealed record NearestToWant(Objective Want, IReadOnlyDictionary<string, object> Changes, IReadOnlyDictionary<string, double> Values);
