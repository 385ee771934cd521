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
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A person's own recording, heard as another pickup would have given it.</summary>
internal static class RecordingEndpoints
{
    private const long MostBytes = (long)RecordingPage.MostMegabytes << 20;

    public static void MapRecordings(this IEndpointRouteBuilder app)
    {
        app.MapGet("/listen/recording", ShowAsync);
        app.MapPost("/listen/recording", HearAsync).WithMetadata(new ChangesNothing(), new RequestSizeLimitAttribute(MostBytes));
        app.MapGet("/listen/recording/{which}.wav", Sound);
    }

    private static async Task<IResult> ShowAsync(Guid? sound, ShopServices shop, HearRecordings hear, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        if (sound is not { } id)
        {
            return Page(RecordingForm.First, recipes, [], null, "");
        }

        return hear.Find(id) is { } heard
            ? Page(new RecordingForm(heard.Asked.From, heard.Asked.To, heard.Asked.Matched), recipes, [], new RecordingView(heard), $"{id}")
            : Gone();
    }

    private static async Task<IResult> HearAsync(HttpRequest request, ShopServices shop, HearRecordings hear, CancellationToken cancel)
    {
        IFormCollection sent = await request.ReadFormAsync(cancel);
        IReadOnlyList<RevisionRecord> recipes = await shop.Recipes.ListAsync(cancel);
        HeardRecording? before = Guid.TryParse(sent["kept"].ToString(), out Guid kept) ? hear.Find(kept) : null;
        PickupOfSound from = await PickupAsync(sent, "from", before?.Asked.From, cancel),
            to = await PickupAsync(sent, "to", before?.Asked.To, cancel);
        bool matched = sent["level"] != "true";
        byte[] wave = sent.Files.GetFile("recording") is { Length: > 0 } file
            ? await SentFile.BytesAsync(file, cancel)
            : before?.Asked.Wave ?? [];
        KnownParts parts = await shop.Recipes.KnownPartsAsync(cancel);
        ReadOutcome<HeardRecording> heard = await hear.HearAsync(new RevoiceQuestion(from, to, wave, matched), recipes, parts, cancel);
        string again = before is null ? "" : $"{before.Id}";
        return heard.Value is { } made
            ? Results.LocalRedirect($"/listen/recording?sound={made.Id}")
            : Page(new RecordingForm(from, to, matched), recipes, heard.Problems, null, again);
    }

    /// <summary>What was chosen; a file that was sent before stays until another or a recipe is chosen.</summary>
    private static async Task<PickupOfSound> PickupAsync(IFormCollection sent, string name, PickupOfSound? before, CancellationToken cancel)
    {
        Guid? recipe = Guid.TryParse(sent[name].ToString(), out Guid id) ? id : null;
        string load = sent[name + "Load"].ToString();
        if (sent.Files.GetFile(name + ".file") is { Length: > 0 } file)
        {
            return new PickupOfSound(recipe, load, file.FileName, await SentFile.TextAsync(file, cancel));
        }

        return recipe is null && before is { FileText.Length: > 0 } kept
            ? kept with
            {
                LoadKey = load,
            }
            : new PickupOfSound(recipe, load, "", "");
    }

    private static IResult Sound(string which, Guid sound, HearRecordings hear)
    {
        HeardRecording? heard = hear.Find(sound);
        byte[]? wave = which switch
        {
            "a" => heard?.Recorded,
            "b" => heard?.Heard,
            _ => null,
        };
        return wave is null ? Answers.NotFoundPage() : ListenEndpoints.Wave(wave);
    }

    private static RazorComponentResult Page(
        RecordingForm form,
        IReadOnlyList<RevisionRecord> recipes,
        IReadOnlyList<Problem> problems,
        RecordingView? view,
        string kept
    ) =>
        Answers.Page<RecordingPage>(
            new()
            {
                ["Form"] = form,
                ["Recipes"] = recipes,
                ["Problems"] = problems,
                ["View"] = view,
                ["Kept"] = kept,
            },
            Answers.StatusOf(problems)
        );

    private static RazorComponentResult Gone() =>
        Answers.Page<MessagePage>(
            new()
            {
                ["Title"] = "This recording is gone",
                ["Text"] = "Recordings stay in memory alone: the last few, until the program stops. Send it again under Listen.",
            },
            StatusCodes.Status404NotFound
        );
}
