using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Coilwright.Web.Hosting.Access;
using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Tests.Access;

/// <summary>Who may open which address: made from the addresses there are, so that a new one is not forgotten.</summary>
public sealed partial class RouteRulesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_address_has_a_rule_and_every_rule_an_address()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (string Method, string Pattern)[] routes = RoutesOf(shop);

        Assert.InRange(routes.Length, 150, 1000);
        Assert.Empty(
            routes.Where(route => RouteRules.Of(route.Pattern, route.Method) is null).Select(route => $"{route.Method} {route.Pattern}")
        );
        string[] unused =
        [
            .. RouteRules
                .All.Where(rule => rule.Pattern is not ("/{*path}" or "/demo"))
                .Where(rule => !routes.Any(route => RouteRules.Of(route.Pattern, route.Method) == rule))
                .Select(rule => $"{rule.Methods} {rule.Pattern}"),
        ];
        Assert.Empty(unused);
    }

    [Fact]
    public void An_address_without_a_rule_is_known_as_such()
    {
        Assert.Null(RouteRules.Of("/somewhere/new", "GET"));
        Assert.Null(RouteRules.Of("/batches", "POST"));
        Assert.Equal(Right.Manage, RouteRules.Of("/shop/anything/new", "GET")?.Needs);
        Assert.Equal(Right.Deliver, RouteRules.Of("/shop", "GET")?.Needs);
        Assert.Equal(Right.Test, RouteRules.Of("/pieces/{serial}/close", "POST")?.Needs);
    }

    [Fact]
    public async Task Every_address_refuses_every_role_that_may_not_and_nobody_without_a_session_gets_in()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        using HttpClient nobody = people.Shop.Browser();
        List<string> wrong = [];
        int asked = 0;
        foreach ((string method, string pattern) in RoutesOf(people.Shop))
        {
            RouteRule rule = RouteRules.Of(pattern, method)!;
            if (!rule.IsOpen)
            {
                HttpStatusCode outside = await AskAsync(nobody, method, pattern);
                bool isKept = outside is HttpStatusCode.Unauthorized || (method == "GET" && outside == HttpStatusCode.Redirect);
                wrong.AddRange(isKept ? [] : [$"nobody {method} {pattern}: {outside}"]);
            }

            foreach (Role role in RoleRights.OfPeople.Where(role => rule.Needs is { } right && !RoleRights.Of(role).Contains(right)))
            {
                asked++;
                HttpStatusCode told = await AskAsync(await people.AsAsync(role), method, pattern);
                wrong.AddRange(told == HttpStatusCode.Forbidden ? [] : [$"{role} {method} {pattern}: {told}"]);
            }
        }

        Assert.Empty(wrong);
        Assert.InRange(asked, 200, 2000);
    }

    [Fact]
    public async Task Every_page_of_the_day_opens_to_every_role_that_may()
    {
        await using PeopleOfShop people = await PeopleOfShop.StartAsync();
        List<string> wrong = [];
        foreach (
            (string method, string pattern) in RoutesOf(people.Shop).Where(route => route.Method == "GET" && !route.Pattern.Contains('{'))
        )
        {
            RouteRule rule = RouteRules.Of(pattern, method)!;
            foreach (Role role in RoleRights.OfPeople.Where(role => rule.Needs is { } right && RoleRights.Of(role).Contains(right)))
            {
                HttpStatusCode told = await AskAsync(await people.AsAsync(role), method, pattern);
                bool isRefused = told is HttpStatusCode.Forbidden or HttpStatusCode.Unauthorized or HttpStatusCode.InternalServerError;
                wrong.AddRange(isRefused ? [$"{role} {method} {pattern}: {told}"] : []);
            }
        }

        Assert.Empty(wrong);
    }

    private static async Task<HttpStatusCode> AskAsync(HttpClient browser, string method, string pattern)
    {
        string address = Parameter()
            .Replace(pattern, part => part.Value.Contains("guid", StringComparison.Ordinal) ? Guid.Empty.ToString() : "1");
        using HttpRequestMessage request = new(new HttpMethod(method), new Uri(address, UriKind.Relative));
        if (method != "GET")
        {
            bool isApi = address.StartsWith("/api", StringComparison.Ordinal);
            request.Content = new StringContent(
                isApi ? "{}" : "",
                Encoding.UTF8,
                isApi ? "application/json" : "application/x-www-form-urlencoded"
            );
        }

        using HttpResponseMessage answer = await browser.SendAsync(request, Cancel);
        return answer.StatusCode;
    }

    private static (string Method, string Pattern)[] RoutesOf(ServedShop shop) =>
        [
            .. shop.Use<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Where(route => !(route.RoutePattern.RawText ?? "").Contains("{*", StringComparison.Ordinal))
                .SelectMany(route =>
                    (route.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? []).Select(method =>
                        (method, route.RoutePattern.RawText!)
                    )
                ),
        ];

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Parameter();
}
