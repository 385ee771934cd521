using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Hosting.Access;

/// <summary>
/// Which address needs which right: the one place where it stands. An address without a rule is open to nobody, and a test names it.
/// </summary>
internal static class RouteRules
{
    /// <summary>Every rule; of several that cover an address the one that says most of it holds.</summary>
    public static IReadOnlyList<RouteRule> All { get; } =
    [
        Open("GET", "/built/{name}"),
        Open("GET", "/api/health"),
        Open("any", "/sign-in"),
        Signed("POST", "/sign-out"),
        Signed("any", "/who"),
        Signed("any", "/account"),
        Signed("any", "/account/**"),
        Signed("GET", "/api/now"),
        Signed("any", "/{*path}"), // nothing stands there
        // everybody sees the shop's day
        Look("/"),
        Look("/batches"),
        Look("/batches/{id:guid}"),
        Look("/batches/{id:guid}/coils/{tag}"),
        Look("/charts"),
        Look("/charts/coils.csv"),
        Look("/clocks"),
        Look("/assembly"),
        Look("/sets"),
        Look("/magnets"),
        Look("/test"),
        Look("/pieces"),
        Look("/pieces/**"),
        Look("/spools"),
        Look("/machines"),
        Look("/find"),
        Look("/help"),
        Look("/help/{page}"),
        Look("/understood"),
        Look("/recipes"),
        Look("/recipes/{id:guid}"),
        Look("/recipes/{id:guid}/setup"),
        Look("/recipes/{id:guid}/papers/**"),
        Look("/recipes/{id:guid}/{number:int}/section-{coil:int}.svg"),
        Look("/recall"),
        Look("/recall.csv"),
        Look("/measure"),
        Look("/measure/**"),
        new("POST", "/measure/**", Right.Look),
        Look("/labels"),
        Look("/labels.html"),
        Look("/labels.pdf"),
        Look("/clocks/baskets/{id:guid}/tag.pdf"),
        Look("/clocks/inks/{label}/tag.pdf"),
        // the winding room
        new("any", "/batches/{id:guid}/enter", Right.Wind),
        new("any", "/batches/{id:guid}/wind", Right.Wind),
        new("POST", "/batches/{id:guid}/wind/undo", Right.Wind),
        new("POST", "/batches/{id:guid}/undo", Right.Wind),
        new("POST", "/batches/{id:guid}/answer", Right.Wind),
        new("GET", "/batches/{id:guid}/setup", Right.Wind),
        new("GET", "/batches/{id:guid}/setup.pdf", Right.Wind),
        new("GET", "/batches/{id:guid}/tags", Right.Wind),
        new("any", "/batches/{id:guid}/coils/{tag}/correct", Right.Wind),
        new("POST", "/batches/{id:guid}/coils/{tag}/was", Right.Wind),
        new("POST", "/api/batches/{id:guid}/coils", Right.Wind),
        new("POST", "/api/batches/{id:guid}/events", Right.Wind),
        new("POST", "/api/batches/{id:guid}/undo", Right.Wind),
        new("GET", "/api/counts/{batch}", Right.Wind),
        new("GET", "/api/meters/{name}", Right.Wind),
        new("POST", "/api/counts/{batch}", Right.Instrument),
        new("POST", "/api/meters/{name}", Right.Instrument),
        new("POST", "/room", Right.Wind),
        new("POST", "/spools/weigh", Right.Wind),
        new("POST", "/spools/measure", Right.Wind),
        // finishing
        new("POST", "/assembly", Right.Finish),
        new("POST", "/sets", Right.Finish),
        new("POST", "/sets/leave", Right.Finish),
        new("POST", "/clocks/**", Right.Finish),
        new("POST", "/magnets/charge", Right.Finish),
        new("POST", "/pieces/{serial}/charge", Right.Finish),
        new("POST", "/pieces/{serial}/exchange", Right.Finish),
        new("POST", "/pieces/{serial}/time", Right.Finish),
        new("POST", "/pieces/{serial}/undo", Right.Finish),
        new("POST", "/pieces/{serial}/examine", Right.Test),
        new("POST", "/pieces/{serial}/close", Right.Test),
        new("POST", "/test", Right.Test),
        new("POST", "/api/pieces/told", Right.Finish),
        // customers
        new("POST", "/pieces/{serial}/reserve", Right.Deliver),
        new("POST", "/pieces/{serial}/ship", Right.Deliver),
        new("POST", "/pieces/{serial}/return", Right.Deliver),
        new("GET", "/shop", Right.Deliver),
        new("POST", "/shop/customers", Right.Deliver),
        new("any", "/shop/customers/erase", Right.Deliver),
        new("GET", "/recall/{paper}", Right.Deliver),
        // wire
        new("POST", "/spools", Right.Stock),
        // design
        new("any", "/compare", Right.Design),
        new("any", "/compare/**", Right.Design),
        new("any", "/listen", Right.Design),
        new("any", "/listen/**", Right.Design),
        new("POST", "/recipes", Right.Design),
        new("any", "/recipes/new", Right.Design),
        new("POST", "/recipes/{id:guid}", Right.Design),
        new("any", "/recipes/{id:guid}/**", Right.Design),
        new("POST", "/api/predict", Right.Design),
        new("POST", "/batches/{id:guid}/close", Right.Design),
        new("POST", "/batches/{id:guid}/more", Right.Design),
        new("POST", "/batches/{id:guid}/reopen", Right.Design),
        new("POST", "/charts/limits", Right.Design),
        new("POST", "/machines", Right.Design),
        new("any", "/machines/**", Right.Design),
        new("any", "/recipes/{id:guid}/secret", Right.Secrets),
        // the shop itself
        new("any", "/shop/**", Right.Manage),
        new("any", "/demo", Right.Manage),
    ];

    /// <summary>The rule of an endpoint; null when none covers it.</summary>
    public static RouteRule? Of(Endpoint? endpoint, string method) =>
        endpoint is RouteEndpoint route ? Of(route.RoutePattern.RawText ?? "", method) : null;

    /// <summary>The rule of a route as it is mapped; null when none covers it.</summary>
    public static RouteRule? Of(string pattern, string method)
    {
        string rooted = pattern.StartsWith('/') ? pattern : "/" + pattern;
        return All.Where(rule => rule.Covers(method, rooted)).MaxBy(rule => rule.Weight);
    }

    private static RouteRule Open(string methods, string pattern) => new(methods, pattern, null, IsOpen: true);

    private static RouteRule Signed(string methods, string pattern) => new(methods, pattern, null);

    private static RouteRule Look(string pattern) => new("GET", pattern, Right.Look);
}
