namespace Coilwright.Workshop.Rules;

/// <summary>The shop's rules as they were entered. Never edited: the newest holds.</summary>
/// <param name="Id">Client-made id.</param>
/// <param name="Json">The rules, in the format coilwright.rules/1.</param>
/// <param name="Person">Who entered them.</param>
/// <param name="TimeUtc">When.</param>
public sealed record ShopRulesRecord(Guid Id, string Json, string Person, DateTimeOffset TimeUtc);
