using Coilwright.Application.Composition;
using Coilwright.Application.Listening;
using Coilwright.Web.Forms;
using Coilwright.Web.Hosting;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Listening;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A blind test of two designs. What X is stays on this side until the last round is answered.</summary>
internal static class BlindEndpoints
{
    private const int Designs = 2;

    public static void MapBlind(this IEndpointRouteBuilder app)
    {
        app.MapGet("/listen/blind", ShowAsync);
        app.MapPost("/listen/blind", BeginAsync).WithMetadata(new ChangesNothing());
        app.MapPost("/listen/blind/answer", AnswerAsync).WithMetadata(new ChangesNothing());
        app.MapGet("/listen/blind/{sound}.wav", Sound);
    }

    private static async Task<IResult> ShowAsync(
        Guid? test,
        HttpRequest request,
        ShopServices shop,
        BlindTests tests,
        CancellationToken cancel
    )
    {
        if (test is { } id)
        {
            return tests.Find(id) is { } found ? Answers.Page<BlindPage>(new() { ["View"] = new BlindView(found) }) : Gone();
        }

        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        return Chosen(ListenForm.Read(request.Query, recipes, Designs), recipes, []);
    }

    private static async Task<IResult> BeginAsync(
        HttpRequest request,
        ShopServices shop,
        HearDesigns hear,
        BlindTests tests,
        CancellationToken cancel
    )
    {
        IFormCollection sent = await request.ReadFormAsync(cancel);
        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        ListenForm form = ListenForm.Read(sent, recipes, Designs);
        ReadOutcome<HeardDesigns> heard = await ListenEndpoints.HearAsync(form, recipes, shop, hear, cancel);
        if (heard.Value is not { } two)
        {
            return Chosen(form, recipes, heard.Problems);
        }

        int rounds = CountParser.TryParse(sent["rounds"].ToString(), 1, 60, out int number, out _) ? number : 0;
        ReadOutcome<BlindTest> begun = tests.Begin(two, rounds);
        return begun.Value is { } test ? Results.LocalRedirect(AddressOf(test)) : Chosen(form, recipes, begun.Problems);
    }

    private static async Task<IResult> AnswerAsync(HttpRequest request, BlindTests tests, CancellationToken cancel)
    {
        IFormCollection sent = await request.ReadFormAsync(cancel);
        if (!Guid.TryParse(sent["test"].ToString(), out Guid id) || tests.Find(id) is not { } test)
        {
            return Gone();
        }

        string answer = sent["answer"].ToString();
        if (answer is "A" or "B" && CountParser.TryParse(sent["round"].ToString(), 1, 60, out int round, out _))
        {
            test.Answer(round, answer == "B");
        }

        return Results.LocalRedirect(AddressOf(test));
    }

    private static IResult Sound(string sound, Guid test, BlindTests tests, int round = 0)
    {
        BlindTest? found = tests.Find(test);
        byte[]? wave = sound switch
        {
            "a" => found?.Known(0),
            "b" => found?.Known(1),
            "x" => found?.Unknown(round),
            _ => null,
        };
        return wave is null ? Answers.NotFoundPage() : ListenEndpoints.Wave(wave);
    }

    private static string AddressOf(BlindTest test) => $"/listen/blind?test={test.Id}";

    private static RazorComponentResult Chosen(ListenForm form, IReadOnlyList<RevisionRecord> recipes, IReadOnlyList<Problem> problems)
    {
        Problem[] all = [.. form.Problems.Concat(problems).Distinct()];
        return Answers.Page<BlindPage>(
            new()
            {
                ["Form"] = form,
                ["Recipes"] = recipes,
                ["Problems"] = all,
            },
            Answers.StatusOf(all)
        );
    }

    private static RazorComponentResult Gone() =>
        Answers.Page<MessagePage>(
            new()
            {
                ["Title"] = "This test is over",
                ["Text"] =
                    "A blind test is kept until two hours after its last answer or until the program stops, and never stored. Begin a new "
                    + "one under Listen.",
            },
            StatusCodes.Status404NotFound
        );
}
