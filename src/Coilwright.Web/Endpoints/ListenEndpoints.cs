using Coilwright.Application.Composition;
using Coilwright.Application.Listening;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Listening;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Designs of the shop, heard one against the other.</summary>
internal static class ListenEndpoints
{
    public static void MapListen(this IEndpointRouteBuilder app)
    {
        app.MapGet("/listen", ShowAsync);
        app.MapGet("/listen/{place:int}.wav", SoundAsync);
    }

    /// <summary>A sound file, alike in its headers whatever stands in it.</summary>
    public static IResult Wave(byte[] wave) => Results.File(wave, "audio/wav", enableRangeProcessing: true);

    /// <summary>Why there is no sound, for whoever asks for the file alone.</summary>
    public static IResult NoSound(IEnumerable<Problem> problems) =>
        Results.Text(
            string.Join('\n', problems.Select(problem => ProblemSentences.Write(problem))),
            "text/plain; charset=utf-8",
            statusCode: StatusCodes.Status422UnprocessableEntity
        );

    private static async Task<IResult> ShowAsync(HttpRequest request, ShopServices shop, HearDesigns hear, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        ListenForm form = ListenForm.Read(request.Query, recipes, ListenQuestion.MostDesigns);
        ReadOutcome<HeardDesigns> heard = await HearAsync(form, recipes, shop, hear, cancel);
        return Answers.Page<ListenPage>(
            new()
            {
                ["Form"] = form,
                ["Recipes"] = recipes,
                ["Problems"] = heard.Problems,
                ["View"] = heard.Value is { } value ? new ListenView(value, form.Query) : null,
            },
            Answers.StatusOf(heard.Problems)
        );
    }

    private static async Task<IResult> SoundAsync(
        int place,
        HttpRequest request,
        ShopServices shop,
        HearDesigns hear,
        CancellationToken cancel
    )
    {
        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        ListenForm form = ListenForm.Read(request.Query, recipes, ListenQuestion.MostDesigns);
        ReadOutcome<HeardDesigns> heard = await HearAsync(form, recipes, shop, hear, cancel);
        if (heard.Value is not { } value)
        {
            return NoSound(heard.Problems);
        }

        return place < value.Designs.Count ? Wave(value.Wave(place)) : Answers.NotFoundPage();
    }

    /// <summary>The sounds of a form, or everything that is wrong with it.</summary>
    internal static async Task<ReadOutcome<HeardDesigns>> HearAsync(
        ListenForm form,
        IReadOnlyList<RevisionRecord> recipes,
        ShopServices shop,
        HearDesigns hear,
        CancellationToken cancel
    )
    {
        if (form.Problems.Count > 0)
        {
            return new ReadOutcome<HeardDesigns>(null, form.Problems);
        }

        return await hear.HearAsync(form.Question, recipes, await shop.Recipes.KnownPartsAsync(cancel), cancel);
    }
}
