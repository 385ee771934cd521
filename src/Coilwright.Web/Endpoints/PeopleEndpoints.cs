using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Hosting.Access;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.People;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Who has an account, who is signed in, and tokens.</summary>
internal static class PeopleEndpoints
{
    private const string Address = "/shop/people";
    private const int MostEvents = 30;

    /// <summary>What the page needs.</summary>
    internal sealed record People(
        AccountService Accounts,
        SignInService Sessions,
        TokenService Tokens,
        IPeopleRecords Records,
        TimeProvider Time
    );

    public static void MapPeople(this IEndpointRouteBuilder app)
    {
        app.MapGet(Address, async ([AsParameters] People people, CancellationToken cancel) =>
            await PageAsync([], FormValues.Nothing, ("", ""), people, cancel)
        );
        app.MapPost(Address + "/first", FirstAsync).WithMetadata(new ChangesNothing());
        Map(app, "", InviteAsync);
        Map(app, "/role", async (typed, by, people, cancel) =>
            (await people.Accounts.ChangeRoleAsync(typed["name"], typed["role"], by, cancel), "", "")
        );
        Map(app, "/remove", async (typed, by, people, cancel) => (await people.Accounts.RemoveAsync(typed["name"], by, cancel), "", ""));
        Map(app, "/password", async (typed, by, people, cancel) =>
        {
            InvitedOutcome outcome = await people.Accounts.SetPasswordAsync(typed["name"], "", mustChange: true, by, cancel);
            return (outcome.Problems, outcome.Password, $"{typed["name"]} signs in with this password and then chooses another.");
        });
        Map(app, "/sessions/end", async (typed, by, people, cancel) =>
            (await people.Sessions.EndAsync(Guid.TryParse(typed["session"], out Guid id) ? id : Guid.Empty, by, cancel), "", "")
        );
        Map(app, "/tokens", async (typed, by, people, cancel) =>
        {
            KeyOutcome outcome = await people.Tokens.MakeAsync(typed["token-name"], typed["token-role"], typed["token-days"], by, cancel);
            return (outcome.Problems, outcome.Key, $"The key of {typed["token-name"]}.");
        });
        Map(app, "/tokens/end", async (typed, by, people, cancel) =>
            (await people.Tokens.EndAsync(typed["token-name"], by, cancel), "", "")
        );
    }

    private delegate Task<(IReadOnlyList<Problem> Problems, string TellOnce, string Words)> Act(
        FormValues typed,
        string by,
        People people,
        CancellationToken cancel
    );

    private static void Map(IEndpointRouteBuilder app, string below, Act act) =>
        app.MapPost(Address + below, async (HttpContext context, [AsParameters] People people, CancellationToken cancel) =>
            {
                FormValues typed = new(await context.Request.ReadFormAsync(cancel));
                if (context.SignedIn() is not { } person)
                {
                    Problem first = new("name", "the first account of a shop is its owner's", null, "make it first");
                    return await PageAsync([first], typed, ("", ""), people, cancel);
                }

                (IReadOnlyList<Problem> problems, string tellOnce, string words) = await act(typed, person.Name, people, cancel);
                return problems.Count == 0 && tellOnce.Length == 0
                    ? Results.LocalRedirect(Address)
                    : await PageAsync(problems, Again(typed, problems), (tellOnce, words), people, cancel);
            })
            .WithMetadata(new ChangesNothing());

    /// <summary>What was typed stands in the form again while something is wrong with it.</summary>
    private static FormValues Again(FormValues typed, IReadOnlyList<Problem> problems) => problems.Count == 0 ? FormValues.Nothing : typed;

    private static async Task<(IReadOnlyList<Problem>, string, string)> InviteAsync(
        FormValues typed,
        string by,
        People people,
        CancellationToken cancel
    )
    {
        InvitedOutcome outcome = await people.Accounts.InviteAsync(typed["name"], typed["role"], "", mustChange: true, by, cancel);
        return (outcome.Problems, outcome.Password, $"{typed["name"]} signs in with this password and then chooses another.");
    }

    /// <summary>The first account, which only whoever sits at the shop's own computer makes; they are signed in with it at once.</summary>
    private static async Task<IResult> FirstAsync(HttpContext context, [AsParameters] People people, CancellationToken cancel)
    {
        FormValues typed = new(await context.Request.ReadFormAsync(cancel));
        List<Problem> problems = [];
        if (await people.Sessions.IsNeededAsync(cancel) || !AccessGuard.IsOwnComputer(context.Connection.RemoteIpAddress))
        {
            problems.Add(new Problem("name", "the first account is made once, on the computer that serves the shop"));
        }
        else if (typed["password"].Length == 0)
        {
            problems.Add(new Problem("password", "the password is missing"));
        }
        else
        {
            string owner = RoleRights.Word(Role.Owner);
            problems.AddRange(
                (await people.Accounts.InviteAsync(typed["name"], owner, typed["password"], mustChange: false, "", cancel)).Problems
            );
        }

        if (problems.Count > 0)
        {
            return await PageAsync(problems, typed, ("", ""), people, cancel);
        }

        string device = context.Request.Headers.UserAgent.ToString();
        SessionCookie.Give(context, (await people.Sessions.SignInAsync(typed["name"], typed["password"], device, cancel)).Key);
        return Results.LocalRedirect(Address);
    }

    private static async Task<IResult> PageAsync(
        IReadOnlyList<Problem> problems,
        FormValues typed,
        (string Secret, string Words) tellOnce,
        People people,
        CancellationToken cancel
    ) =>
        Answers.Page<PeoplePage>(
            new()
            {
                ["People"] = await people.Accounts.PeopleAsync(cancel),
                ["Sessions"] = await people.Sessions.SessionsAsync(cancel),
                ["Tokens"] = await people.Tokens.ListAsync(cancel),
                ["Events"] = await people.Records.EventsAsync(MostEvents, cancel),
                ["Problems"] = problems,
                ["Typed"] = typed,
                ["TellOnce"] = tellOnce.Secret,
                ["TellOnceWords"] = tellOnce.Words,
                ["Zone"] = people.Time.LocalTimeZone,
            },
            Answers.StatusOf(problems)
        );
}
