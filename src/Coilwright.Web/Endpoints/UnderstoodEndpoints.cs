using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Interpretations;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>How the text of a field is understood, while it is typed. Nothing is stored.</summary>
internal static class UnderstoodEndpoints
{
    private const int Longest = 200;

    public static void MapUnderstood(this IEndpointRouteBuilder app) =>
        app.MapGet("/understood", (string? field, string? typed, double? expected) =>
            field is null || typed is null || field.Length > Longest || typed.Length > Longest
                ? (IResult)Results.NotFound()
                : Answers.Page<UnderstoodPart>(new() { ["Interpretation"] = FieldInterpreter.Read(field, Meant(field, typed), expected) })
        );

    /// <summary>A meter may be the one that types a coil's ohms.</summary>
    private static string Meant(string field, string typed) => field == "entry.resistance" ? MeterEntryParser.Of(typed) : typed;
}
