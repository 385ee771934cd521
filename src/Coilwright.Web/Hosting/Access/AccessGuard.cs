using System.Net;
using Coilwright.Web.Endpoints;
using Coilwright.Web.Pages;
using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Hosting.Access;

/// <summary>
/// Asks who is there and whether they may, before an address does anything. A shop without accounts is open on its own computer and
/// nowhere else.
/// </summary>
public sealed class AccessGuard(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, SignInService sessions, TokenService tokens)
    {
        if (!await sessions.IsNeededAsync(context.RequestAborted))
        {
            await (IsOwnComputer(context.Connection.LocalIpAddress) ? next(context) : NoAccountsAsync(context));
            return;
        }

        RouteRule? rule = RouteRules.Of(context.GetEndpoint(), context.Request.Method);
        SignedIn? person = await WhoAsync(context, sessions, tokens);
        context.Features.Set(person);
        if (rule?.IsOpen == true || (person is not null && rule is { Needs: null }))
        {
            await next(context);
        }
        else if (person is null)
        {
            await AskAsync(context);
        }
        else if (person.MustChange || person.AsksWho)
        {
            await SendAsync(context, person.MustChange ? "/account" : "/who", Waits(person));
        }
        else if (rule is { Needs: { } right } && person.May(right))
        {
            await next(context);
        }
        else
        {
            await RefuseAsync(context, person, rule?.Needs);
        }
    }

    /// <summary>True for an address of this computer alone; a connection without one comes from within.</summary>
    internal static bool IsOwnComputer(IPAddress? address) =>
        address is null || IPAddress.IsLoopback(address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address);

    private static async Task<SignedIn?> WhoAsync(HttpContext context, SignInService sessions, TokenService tokens)
    {
        const string Bearer = "Bearer ";
        string said = context.Request.Headers.Authorization.ToString();
        if (said.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase))
        {
            return await tokens.WhoAsync(said[Bearer.Length..].Trim(), context.RequestAborted);
        }

        return SessionCookie.Read(context.Request) is { } key ? await sessions.WhoAsync(key, context.RequestAborted) : null;
    }

    private static Task NoAccountsAsync(HttpContext context) =>
        Refusal.WriteAsync(
            context,
            StatusCodes.Status403Forbidden,
            "account",
            "This shop has no accounts yet, and is open on its own computer only. Make the first there, under Shop, People."
        );

    private static Task AskAsync(HttpContext context)
    {
        bool wasSignedIn = SessionCookie.Read(context.Request) is not null;
        string words = wasSignedIn ? "The session is over: sign in again. Nothing was stored." : "Sign in first. Nothing was stored.";
        if (IsApi(context))
        {
            context.Response.Headers.WWWAuthenticate = "Bearer";
        }

        return SendAsync(context, "/sign-in?to=" + Uri.EscapeDataString(Wanted(context)), words);
    }

    private static string Waits(SignedIn person) =>
        person.MustChange
            ? "Choose a password of your own first, under My account. Nothing was stored."
            : "Nobody stands at this tablet: say who is there. Nothing was stored.";

    /// <summary>Where a person is sent on to; programs and forms are told why nothing was done.</summary>
    private static Task SendAsync(HttpContext context, string address, string words)
    {
        if (IsApi(context))
        {
            return Refusal.WriteAsync(context, StatusCodes.Status401Unauthorized, "account", words);
        }

        return HttpMethods.IsGet(context.Request.Method)
            ? Redirect(context, address)
            : Page(
                context,
                StatusCodes.Status401Unauthorized,
                "Sign in",
                words + " What you typed is still in the form: sign in in another " + "tab, then go back and send it again."
            );
    }

    private static Task RefuseAsync(HttpContext context, SignedIn person, Right? needs)
    {
        string roles = string.Join(
            " or ",
            RoleRights.OfPeople.Where(role => needs is { } right && RoleRights.Of(role).Contains(right)).Select(RoleRights.Word)
        );
        string may = roles.Length > 0 ? $"This is for: {roles}." : "This is open to nobody.";
        string pin = person.ByPin ? " Somebody who came with a PIN may need to sign in with the password." : "";
        string words = $"{person.Name} is signed in as {RoleRights.Word(person.Role)}. {may}{pin} Nothing was changed.";
        return IsApi(context)
            ? Refusal.WriteAsync(context, StatusCodes.Status403Forbidden, "account", words)
            : Page(context, StatusCodes.Status403Forbidden, "Not for this role", words);
    }

    private static Task Redirect(HttpContext context, string address)
    {
        context.Response.Redirect(address);
        return Task.CompletedTask;
    }

    private static Task Page(HttpContext context, int status, string title, string words) =>
        ((IResult)Answers.Page<MessagePage>(new() { ["Title"] = title, ["Text"] = words }, status)).ExecuteAsync(context);

    private static string Wanted(HttpContext context) =>
        HttpMethods.IsGet(context.Request.Method) ? context.Request.Path + context.Request.QueryString.Value : "/";

    private static bool IsApi(HttpContext context) => context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal);
}
