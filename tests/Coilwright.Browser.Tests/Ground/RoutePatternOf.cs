using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.AspNetCore.Routing.Template;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>The pattern of an address, and whether a given address is of it.</summary>
public sealed class RoutePatternOf(RoutePattern pattern)
{
    private readonly TemplateMatcher _matcher = new(new RouteTemplate(pattern), []);

    public string Text { get; } = "/" + pattern.RawText?.TrimStart('/');

    /// <summary>How many of its parts stand fast; of two patterns that fit, the one with more is meant.</summary>
    public int Fast { get; } = pattern.PathSegments.Count(segment => segment.IsSimple && segment.Parts[0].IsLiteral);

    public bool Fits(string path) => _matcher.TryMatch(path, []);
}
