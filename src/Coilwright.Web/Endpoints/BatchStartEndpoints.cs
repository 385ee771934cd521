using System.Globalization;
using Coilwright.Application.Composition;
using Coilwright.Application.Winding;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A batch begins on a revision: its spool and its winder are chosen from what there is, or made on the spot.</summary>
internal static class BatchStartEndpoints
{
    public static void MapBatchStart(this IEndpointRouteBuilder app)
    {
        app.MapGet("/recipes/{id:guid}/batches/new", async (Guid id, int? revision, ShopServices shop, CancellationToken cancel) =>
            await AskAsync(await RevisionAsync(id, revision, shop, cancel), [], FormValues.Nothing, shop, cancel)
        );
        app.MapPost("/recipes/{id:guid}/batches", BeginAsync);
    }

    private static async Task<RevisionRecord?> RevisionAsync(Guid id, int? number, ShopServices shop, CancellationToken cancel)
    {
        IReadOnlyList<RevisionRecord> revisions = await shop.Records.Recipes.RevisionsAsync(id, cancel);
        return number is null
            ? revisions.Where(one => one.State == RevisionState.Released).MaxBy(one => one.Number)
            : revisions.FirstOrDefault(one => one.Number == number);
    }

    private static async Task<IResult> AskAsync(
        RevisionRecord? revision,
        IReadOnlyList<Problem> problems,
        FormValues typed,
        ShopServices shop,
        CancellationToken cancel
    )
    {
        if (revision is null || RecipeReader.Read(revision.Json).Value is not { } recipe)
        {
            return Answers.NotFoundPage();
        }

        return Answers.Page<BatchStartPage>(
            new()
            {
                ["Revision"] = revision,
                ["CoilNames"] = recipe.Coils.Select(coil => coil.Name).ToArray(),
                ["Gauge"] = SetUpRecipe.GaugeOf(recipe),
                ["Shelf"] = await shop.Stock.ShelfAsync(cancel),
                ["Winders"] = await shop.Machines.ListAsync(cancel),
                ["Warnings"] = BeforeWinding.Warnings(revision, recipe, await shop.Recipes.KnownPartsAsync(cancel)),
                ["Problems"] = problems,
                ["Typed"] = typed,
            },
            problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity
        );
    }

    private static async Task<IResult> BeginAsync(Guid id, string? add, HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        FormValues typed = new(form);
        RevisionRecord? revision = int.TryParse(typed["number"], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? await RevisionAsync(id, number, shop, cancel)
            : null;
        if (revision is null)
        {
            return Answers.NotFoundPage();
        }

        if (add is "spool" or "winder")
        {
            IReadOnlyList<Problem> wrong =
                add == "spool"
                    ? await TakeInAsync(typed, shop, cancel)
                    : await shop.Machines.AddAsync(Guid.NewGuid(), typed["winderName"], typed["person"], cancel);
            return await AskAsync(revision, wrong, wrong.Count == 0 ? Chosen(form, add) : typed, shop, cancel);
        }

        (BatchRecord? batch, IReadOnlyList<Problem> problems) = Read(typed, revision, shop);
        problems = batch is null ? problems : await shop.Winding.BeginBatchAsync(batch, cancel);
        return problems.Count == 0
            ? Results.LocalRedirect($"/batches/{batch!.Id}/enter")
            : await AskAsync(
                revision,
                [.. problems.Select(problem => problem.Field == "tags" ? problem with { Field = "prefix" } : problem)],
                typed,
                shop,
                cancel
            );
    }

    private static (BatchRecord? Batch, IReadOnlyList<Problem> Problems) Read(
        FormValues typed,
        RevisionRecord revision,
        ShopServices shop
    ) =>
        CountParser.TryParse(typed["quantity"], int.MinValue, int.MaxValue, out int coils, out string why)
            ? (
                new BatchRecord(
                    typed.Id,
                    typed["name"],
                    revision.RecipeId,
                    revision.Number,
                    typed["coil"],
                    coils,
                    typed["prefix"],
                    typed["spool"],
                    typed["machine"],
                    typed["person"],
                    shop.Time.GetUtcNow()
                ),
                []
            )
            : (null, [new Problem("quantity", why, typed["quantity"], "1 to 10,000 coils")]);

    /// <summary>Takes the spool in; its problems stand beside the fields of this page.</summary>
    private static async Task<IReadOnlyList<Problem>> TakeInAsync(FormValues typed, ShopServices shop, CancellationToken cancel)
    {
        SpoolRecord spool = new()
        {
            Id = Guid.NewGuid(),
            Label = typed["spoolLabel"],
            Lot = typed["spoolLot"].Trim(),
            Gauge = typed["spoolGauge"],
            Insulation = typed["spoolInsulation"],
            Build = typed["spoolBuild"],
            Person = typed["person"].Trim(),
            TimeUtc = shop.Time.GetUtcNow(),
        };
        IReadOnlyList<Problem> problems = await shop.Stock.TakeInAsync(spool, typed["spoolReceived"], typed["spoolTare"], cancel);
        return
        [
            .. problems.Select(problem => problem with { Field = "spool" + char.ToUpperInvariant(problem.Field[0]) + problem.Field[1..] }),
        ];
    }

    /// <summary>The form with what was just made chosen, and its own fields empty again.</summary>
    private static FormValues Chosen(IFormCollection form, string made)
    {
        string field = made == "spool" ? "spool" : "machine",
            from = made == "spool" ? "spoolLabel" : "winderName";
        string name = form[from].ToString();
        return FormValues.Of([
            .. form.Where(one => one.Key != from && one.Key != field).SelectMany(one => one.Value.Select(value => (one.Key, value ?? ""))),
            (field, name),
        ]);
    }
}
