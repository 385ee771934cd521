using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Correction of what was read of a coil, by plain form.</summary>
internal static class CorrectionEndpoints
{
    /// <summary>Shows how a correction is understood and stores nothing.</summary>
    private const string Look = "look";

    public static void MapCorrections(this IEndpointRouteBuilder app)
    {
        app.MapGet("/batches/{id:guid}/coils/{tag}/correct", async (Guid id, string tag, ShopServices shop, CancellationToken cancel) =>
            await PageAsync(id, tag, typed: null, looked: null, shop, cancel)
        );
        app.MapPost("/batches/{id:guid}/coils/{tag}/correct", CorrectAsync);
    }

    /// <summary>Where a coil is corrected.</summary>
    public static string AddressOf(Guid batchId, string tag) => $"/batches/{batchId}/coils/{Uri.EscapeDataString(tag)}/correct";

    private static async Task<IResult> PageAsync(
        Guid id,
        string tag,
        CoilCorrection? typed,
        CoilEntryOutcome? looked,
        ShopServices shop,
        CancellationToken cancel,
        string asked = ""
    )
    {
        if (await shop.Winding.StatusAsync(id, cancel) is not { } standing)
        {
            return Answers.NotFoundPage();
        }

        string tidy = BatchTags.Tidy(standing.Batch, tag);
        if (standing.Coils.FirstOrDefault(coil => coil.Tag == tidy) is not { } coil)
        {
            return looked is { Problems.Count: > 0 } ? MessageOf(looked.Problems) : Answers.NotFoundPage();
        }

        return Answers.Page<CorrectPage>(
            new()
            {
                ["Status"] = standing,
                ["Coil"] = coil,
                ["Typed"] = typed,
                ["Looked"] = looked,
                ["Asked"] = asked,
            },
            Answers.StatusOf(looked?.Problems ?? [])
        );
    }

    private static RazorComponentResult MessageOf(IReadOnlyList<Problem> problems) =>
        Answers.Page<MessagePage>(
            new() { ["Title"] = "Nothing was corrected", ["Text"] = string.Join(" ", problems.Select(problem => problem.Message + ".")) },
            Answers.StatusOf(problems)
        );

    private static async Task<IResult> CorrectAsync(Guid id, string tag, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        CoilCorrection correction = Read(id, tag, typed);
        string act = typed["act"].Length > 0 ? typed["act"] : typed["asked"];
        if (act == Look)
        {
            return await PageAsync(id, tag, correction, await shop.Winding.LookAtCorrectionAsync(correction, cancel), shop, cancel, Look);
        }

        CoilEntryOutcome outcome = await shop.Winding.CorrectCoilAsync(correction, cancel);
        return outcome.Problems.Count > 0
            ? await PageAsync(id, tag, correction, outcome, shop, cancel)
            : Results.LocalRedirect($"/batches/{id}/coils/{Uri.EscapeDataString(outcome.Coil?.Tag ?? tag)}");
    }

    private static CoilCorrection Read(Guid batchId, string tag, FormValues typed)
    {
        List<ReadingAsWritten> readings = [];
        foreach (string written in typed.All("reading"))
        {
            if (Guid.TryParse(written, out Guid reading))
            {
                string Field(string name) => typed[$"{name} {reading}"];
                readings.Add(new ReadingAsWritten(reading, Field("value"), Field("temperature"), Field("at"), Field("turns")));
            }
        }

        return new CoilCorrection
        {
            Id = typed.Id,
            BatchId = batchId,
            Tag = tag,
            NewTag = typed["newTag"],
            Readings = readings,
            Reason = typed["reason"],
            Person = typed["person"],
        };
    }
}
