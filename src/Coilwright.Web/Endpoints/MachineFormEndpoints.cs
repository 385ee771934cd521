using System.Text.Json.Nodes;
using Coilwright.Application.Composition;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>A winder is added or changed by a form.</summary>
internal static class MachineFormEndpoints
{
    public static void MapMachineForm(this IEndpointRouteBuilder app)
    {
        app.MapGet("/machines/new", () => Page(Empty(), "", FormValues.Nothing, []));
        app.MapGet("/machines/change", ChangeAsync);
        app.MapPost("/machines/form", KeepAsync);
    }

    private static JsonObject Empty() => new() { ["format"] = MachineReader.Format };

    private static RazorComponentResult Page(JsonObject document, string changed, FormValues typed, IReadOnlyList<Problem> problems) =>
        Answers.Page<MachineFormPage>(
            new()
            {
                ["Document"] = document,
                ["Changed"] = changed,
                ["Id"] = typed["id"],
                ["Problems"] = problems,
                ["Person"] = typed["person"],
            },
            Answers.StatusOf(problems)
        );

    private static async Task<IResult> ChangeAsync(string? name, ShopServices shop, CancellationToken cancel) =>
        await shop.Machines.TextAsync(name ?? "", cancel) is { } text && JsonNode.Parse(text) is JsonObject document
            ? Page(document, JsonPath.TextAt(document, "name"), FormValues.Nothing, [])
            : Answers.NotFoundPage();

    private static async Task<IResult> KeepAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        IFormCollection form = await request.ReadFormAsync(cancel);
        FormValues typed = new(form);
        string changed = typed["changed"];
        JsonNode? before = changed.Length > 0 && await shop.Machines.TextAsync(changed, cancel) is { } text ? JsonNode.Parse(text) : null;
        JsonObject document = MachineForm.Apply(before as JsonObject ?? Empty(), form);
        IReadOnlyList<Problem> problems = await shop.Machines.KeepTypedAsync(
            typed.Id,
            SettingsForm.Write(document),
            changed,
            typed["person"],
            cancel
        );
        return problems.Count == 0 ? Results.LocalRedirect("/machines") : Page(document, changed, typed, problems);
    }
}
