using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Hosting.Access;
using Coilwright.Web.Pages;
using Coilwright.Workshop;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Signing in and out, who stands at a tablet, and a person's own password and PIN.</summary>
internal static class SignInEndpoints
{
    public static void MapSignIn(this IEndpointRouteBuilder app)
    {
        app.MapGet("/sign-in", async (string? to, IShopRecords shop, SignInService sessions, CancellationToken cancel) =>
            await SignInPageAsync(new() { ["To"] = LocalAddress.From(to ?? "/") }, shop, sessions, cancel)
        );
        app.MapPost("/sign-in", SignInAsync).WithMetadata(new ChangesNothing()).RequireRateLimiting(SignInLimit.Name);
        app.MapPost("/sign-out", SignOutAsync).WithMetadata(new ChangesNothing());
        app.MapGet("/who", async (HttpContext context, AccountService accounts, CancellationToken cancel) =>
            await WhoPageAsync(context, [], "", accounts, cancel)
        );
        app.MapPost("/who", SwitchAsync).WithMetadata(new ChangesNothing()).RequireRateLimiting(SignInLimit.Name);
        app.MapGet("/account", (HttpContext context, string? saved) => AccountPage(context, [], saved is not null));
        app.MapPost("/account/password", SetPasswordAsync).WithMetadata(new ChangesNothing()).RequireRateLimiting(SignInLimit.Name);
        app.MapPost("/account/pin", SetPinAsync).WithMetadata(new ChangesNothing());
    }

    private static async Task<IResult> SignInAsync(HttpContext context, IShopRecords shop, SignInService sessions, CancellationToken cancel)
    {
        FormValues typed = new(await context.Request.ReadFormAsync(cancel));
        string to = LocalAddress.From(typed["to"]);
        string device = context.Request.Headers.UserAgent.ToString();
        KeyOutcome outcome = await sessions.SignInAsync(typed["name"], typed["password"], device, cancel);
        if (outcome.Problems.Count > 0)
        {
            return await SignInPageAsync(
                new()
                {
                    ["To"] = to,
                    ["Name"] = typed["name"],
                    ["Problems"] = outcome.Problems,
                },
                shop,
                sessions,
                cancel
            );
        }

        SessionCookie.Give(context, outcome.Key);
        return Results.LocalRedirect(to);
    }

    private static async Task<IResult> SignInPageAsync(
        Dictionary<string, object?> parameters,
        IShopRecords shop,
        SignInService sessions,
        CancellationToken cancel
    )
    {
        parameters["ShopName"] = await shop.ShopNameAsync(cancel);
        parameters["IsNeeded"] = await sessions.IsNeededAsync(cancel);
        return Answers.Page<SignInPage>(
            parameters,
            parameters.ContainsKey("Problems") ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK
        );
    }

    private static async Task<IResult> SignOutAsync(HttpContext context, SignInService sessions, CancellationToken cancel)
    {
        if (SessionCookie.Read(context.Request) is { } key)
        {
            await sessions.SignOutAsync(key, cancel);
        }

        SessionCookie.Take(context);
        return Results.LocalRedirect("/sign-in");
    }

    private static async Task<IResult> WhoPageAsync(
        HttpContext context,
        IReadOnlyList<Problem> problems,
        string chosen,
        AccountService accounts,
        CancellationToken cancel
    ) =>
        context.SignedIn() is { SessionId: not null } person
            ? Answers.Page<WhoPage>(
                new()
                {
                    ["Person"] = person,
                    ["People"] =
                        (IReadOnlyList<AccountRecord>)[.. (await accounts.PeopleAsync(cancel)).Where(one => one.PinHash.Length > 0)],
                    ["Problems"] = problems,
                    ["Chosen"] = chosen,
                },
                Answers.StatusOf(problems)
            )
            : Answers.NotFoundPage();

    private static async Task<IResult> SwitchAsync(
        HttpContext context,
        SignInService sessions,
        AccountService accounts,
        CancellationToken cancel
    )
    {
        FormValues typed = new(await context.Request.ReadFormAsync(cancel));
        string key = SessionCookie.Read(context.Request) ?? "";
        IReadOnlyList<Problem> problems = await sessions.SwitchAsync(key, typed["name"], typed["pin"], cancel);
        return problems.Count == 0 ? Results.LocalRedirect("/") : await WhoPageAsync(context, problems, typed["name"], accounts, cancel);
    }

    private static RazorComponentResult AccountPage(HttpContext context, IReadOnlyList<Problem> problems, bool saved) =>
        context.SignedIn() is { SessionId: not null, AsksWho: false } person
            ? Answers.Page<AccountPage>(
                new()
                {
                    ["Person"] = person,
                    ["Problems"] = problems,
                    ["Saved"] = saved,
                },
                Answers.StatusOf(problems)
            )
            : Answers.NotFoundPage();

    private static async Task<IResult> SetPasswordAsync(
        HttpContext context,
        SignInService sessions,
        AccountService accounts,
        CancellationToken cancel
    )
    {
        if (context.SignedIn() is not { SessionId: not null, ByPin: false } person)
        {
            return Answers.NotFoundPage();
        }

        FormValues typed = new(await context.Request.ReadFormAsync(cancel));
        string device = context.Request.Headers.UserAgent.ToString();
        KeyOutcome known = await sessions.SignInAsync(person.Name, typed["old"], device, cancel);
        if (known.Problems.Count > 0)
        {
            return AccountPage(context, known.Problems, saved: false);
        }

        await sessions.SignOutAsync(known.Key, cancel);
        InvitedOutcome outcome =
            typed["password"].Length == 0
                ? new([new Problem("password", "the new password is missing")], "")
                : await accounts.SetPasswordAsync(person.Name, typed["password"], mustChange: false, person.Name, cancel);
        if (outcome.Problems.Count > 0)
        {
            return AccountPage(context, outcome.Problems, saved: false);
        }

        KeyOutcome anew = await sessions.SignInAsync(person.Name, typed["password"], device, cancel); // every session before is over
        SessionCookie.Give(context, anew.Key);
        return Results.LocalRedirect("/account?saved=yes");
    }

    private static async Task<IResult> SetPinAsync(HttpContext context, AccountService accounts, CancellationToken cancel)
    {
        if (context.SignedIn() is not { SessionId: not null, ByPin: false, MustChange: false } person)
        {
            return Answers.NotFoundPage();
        }

        FormValues typed = new(await context.Request.ReadFormAsync(cancel));
        IReadOnlyList<Problem> problems = await accounts.SetPinAsync(person.Name, typed["pin"].Trim(), person.Name, cancel);
        return problems.Count == 0 ? Results.LocalRedirect("/account?saved=yes") : AccountPage(context, problems, saved: false);
    }
}
