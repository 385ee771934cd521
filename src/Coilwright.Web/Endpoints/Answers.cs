using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Coilwright.Web.Endpoints;

/// <summary>Answers that several pages give.</summary>
internal static class Answers
{
    /// <summary>A page made of one component.</summary>
    public static RazorComponentResult Page<TComponent>(Dictionary<string, object?> parameters, int status = StatusCodes.Status200OK)
        where TComponent : IComponent => new(typeof(TComponent), parameters) { StatusCode = status, PreventStreamingRendering = true };

    /// <summary>What an answer with these problems is: 409 when an id came again with something else in it.</summary>
    public static int StatusOf(IReadOnlyList<Problem> problems)
    {
        int refused = SentAgain.IsAmong(problems) ? StatusCodes.Status409Conflict : StatusCodes.Status422UnprocessableEntity;
        return problems.Count == 0 ? StatusCodes.Status200OK : refused;
    }

    /// <summary>Nothing stands at this address.</summary>
    public static RazorComponentResult NotFoundPage() =>
        Page<MessagePage>(
            new()
            {
                ["Title"] = "Nothing here",
                ["Text"] = "No page, recipe or batch stands at this address. It may have been mistyped, or belong to another shop.",
            },
            StatusCodes.Status404NotFound
        );
}
