using Coilwright.Physics;

namespace Coilwright.Workshop.Solving;

/// <summary>One small change of a recipe.</summary>
/// <param name="Key">Key of the file format.</param>
/// <param name="Words">In workshop words.</param>
/// <param name="Model">The changed pickup; null when it cannot be made.</param>
/// <param name="WhyNot">Why it cannot be made.</param>
internal sealed record Perturbation(string Key, string Words, PickupModel? Model, string? WhyNot = null);
