using Coilwright.Application.Composition;
using Coilwright.Web.Endpoints;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Steps;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Hosting;

/// <summary>Asks whether the clock is right, before an entry is stored whose time would be far from the newest record's.</summary>
public sealed class ClockGuard(RequestDelegate next)
{
    /// <summary>Field of a form, and parameter of an address of the API, with which a person says that the clock is right.</summary>
    public const string Field = "clock-is-right";

    public async Task InvokeAsync(HttpContext context, ShopServices shop)
    {
        if (!Stores(context) || await shop.Pieces.Shelf.ClockQuestionAsync(context.RequestAborted) is not { } question)
        {
            await next(context);
            return;
        }

        bool isApi = context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal);
        IFormCollection? form = isApi ? null : await context.Request.ReadFormAsync(context.RequestAborted);
        if ((form?[Field] ?? context.Request.Query[Field]) == "yes")
        {
            await shop.Pieces.Shelf.ClockIsRightAsync(form?["person"].ToString() ?? "", context.RequestAborted);
            await next(context);
            return;
        }

        IResult answer = form is null
            ? Results.Json(new { problems = new[] { Problem(question) } }, statusCode: StatusCodes.Status409Conflict)
            : Answers.Page<ClockPage>(
                new()
                {
                    ["Question"] = question,
                    ["Address"] = context.Request.Path + context.Request.QueryString.Value,
                    ["Form"] = form,
                },
                StatusCodes.Status409Conflict
            );
        await answer.ExecuteAsync(context);
    }

    private static Problem Problem(ClockQuestion question) =>
        new("clock", question.Words, null, $"set the clock, or send it again with ?{Field}=yes");

    private static bool Stores(HttpContext context) =>
        context.GetEndpoint()?.Metadata is { } about
        && about.GetMetadata<IHttpMethodMetadata>() is { } methods
        && !methods.HttpMethods.Contains(HttpMethods.Get)
        && about.GetMetadata<ChangesNothing>() is null;
}
