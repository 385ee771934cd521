using Coilwright.Papers.Help;
using Coilwright.Web.Pages;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>The guides, the words and the sources, served by the program itself.</summary>
internal static class HelpEndpoints
{
    public static void MapHelp(this IEndpointRouteBuilder app)
    {
        app.MapGet("/help", List);
        app.MapGet("/help/{page}", Show);
    }

    private static RazorComponentResult List(string? q)
    {
        string asked = (q ?? "").Trim();
        return Answers.Page<HelpListPage>(new() { ["Asked"] = asked, ["Hits"] = HelpFinder.Find(asked) });
    }

    private static RazorComponentResult Show(string page) =>
        HelpLibrary.Find(page) is { } found ? Answers.Page<HelpTextPage>(new() { ["Page"] = found }) : Answers.NotFoundPage();
}
