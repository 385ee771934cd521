using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting.Access;

/// <summary>Who stands behind a request, as pages and addresses ask it.</summary>
internal static class Visitor
{
    /// <summary>Who is signed in; null in a shop without accounts, and where nobody is.</summary>
    public static SignedIn? SignedIn(this HttpContext? context) => context?.Features.Get<SignedIn>();

    /// <summary>True when whoever is there may do it; in a shop without accounts everybody at this computer may.</summary>
    public static bool May(this HttpContext? context, Right right) => context.SignedIn()?.May(right) ?? true;

    /// <summary>True when whoever is there may open an address of ours.</summary>
    public static bool MayOpen(this HttpContext? context, string address) =>
        context.SignedIn() is not { } person || RouteRules.Of(address, HttpMethods.Get) is not { Needs: { } right } || person.May(right);

    /// <summary>The name that a record carries: of the account where one is signed in, else the one typed.</summary>
    public static string PersonOr(this HttpContext? context, string typed) => context.SignedIn()?.Name ?? typed;
}
