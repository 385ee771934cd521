using Coilwright.Workshop.People;

namespace Coilwright.Web.Hosting.Access;

/// <summary>Who may open an address.</summary>
/// <param name="Methods">Methods, or "any".</param>
/// <param name="Pattern">The route as it is mapped; one that ends in "/**" stands for everything below it.</param>
/// <param name="Needs">The right that it needs; null for none.</param>
/// <param name="IsOpen">True when nobody needs to sign in for it.</param>
internal sealed record RouteRule(string Methods, string Pattern, Right? Needs, bool IsOpen = false)
{
    /// <summary>True when the rule is about this route.</summary>
    public bool Covers(string method, string pattern) =>
        (Methods == "any" || Methods == method)
        && (
            Pattern.EndsWith("/**", StringComparison.Ordinal)
                ? pattern.StartsWith(Pattern[..^2], StringComparison.Ordinal)
                : pattern == Pattern
        );

    /// <summary>How closely it describes a route: the rule that says most of it holds.</summary>
    public int Weight => (Pattern.EndsWith("/**", StringComparison.Ordinal) ? 0 : 1000) + Pattern.Length * 2 + (Methods == "any" ? 0 : 1);
}
