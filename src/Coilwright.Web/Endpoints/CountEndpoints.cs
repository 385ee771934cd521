using Coilwright.Application.Composition;
using Coilwright.Application.Instruments;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Hosting;

namespace Coilwright.Web.Endpoints;

/// <summary>Counters that are passed on, by the names of their batches, and what the winder's page shows of them.</summary>
internal static class CountEndpoints
{
    private static readonly string[] s_notes = ["", "soon", "stop", "back", "ahead", "ended", "lost"];

    /// <summary>What a counter's computer passes on.</summary>
    public sealed record Passed(double Counter, double Turns, double? ToStop = null, double Rpm = 0, string Note = "");

    public static void MapCounts(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/counts/{batch}", ShownAsync);
        app.MapPost("/api/counts/{batch}", PassAsync);
    }

    /// <summary>Where the counter stands; at once while nothing was passed on, so that a page without a counter asks seldom.</summary>
    private static async Task<IResult> ShownAsync(
        string batch,
        long? after,
        CountBench counts,
        IHostApplicationLifetime life,
        CancellationToken cancel
    )
    {
        if (!counts.Knows(batch))
        {
            return Results.Json(ShownCount.Nothing);
        }

        return await Answers.NextAsync((patience, ends) => counts.NextAsync(batch, after ?? 0, patience, ends), life, cancel);
    }

    private static async Task<IResult> PassAsync(
        string batch,
        HttpRequest request,
        ShopServices shop,
        CountBench counts,
        CancellationToken cancel
    )
    {
        (Passed? passed, IResult? refused) = await ApiBody.ReadAsync<Passed>(request, cancel);
        if (passed is null)
        {
            return refused!;
        }

        if (!await IsThereAsync(shop, counts, batch, cancel))
        {
            return Unknown(batch);
        }

        Problem[] problems = [.. Wrong(passed)];
        if (problems.Length == 0)
        {
            counts.Pass(batch, new ShownCount(0, passed.Counter, passed.Turns, passed.ToStop, passed.Rpm, passed.Note, 0));
        }

        return Answers.Told(Answers.StatusOf(problems), problems);
    }

    private static IEnumerable<Problem> Wrong(Passed passed)
    {
        foreach ((string field, double value) in new[] { ("counter", passed.Counter), ("turns", passed.Turns), ("rpm", passed.Rpm) })
        {
            if (!(value >= 0 && value <= 2 * TurnCount.Most))
            {
                yield return new Problem(field, "is no counter's reading", null, "0 to 2,000,000");
            }
        }

        if (!s_notes.Contains(passed.Note))
        {
            yield return new Problem("note", "is not one of the words known here", passed.Note, string.Join(", ", s_notes.Skip(1)));
        }
    }

    private static async Task<bool> IsThereAsync(ShopServices shop, CountBench counts, string name, CancellationToken cancel) =>
        counts.Knows(name) || (await shop.Records.Batches.AllAsync(cancel)).Any(batch => NameKey.Same(batch.Name, name));

    private static IResult Unknown(string name)
    {
        Problem unknown = new("batch", "no batch of this name is in the shop", name);
        return Answers.Told(StatusCodes.Status404NotFound, unknown);
    }
}
