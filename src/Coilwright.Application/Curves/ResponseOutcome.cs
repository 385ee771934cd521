using Coilwright.Formats.Responses;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Curves;

/// <summary>A response, or why nothing arrives.</summary>
/// <param name="Answer">The response; null when nothing arrives.</param>
/// <param name="Silent">What is silent: the load, or a pickup by its name.</param>
/// <param name="Why">Why.</param>
public sealed record ResponseOutcome(ResponseAnswer? Answer, string Silent = "", Problem? Why = null);
