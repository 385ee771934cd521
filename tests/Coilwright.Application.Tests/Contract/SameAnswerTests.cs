using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Coilwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace Coilwright.Application.Tests.Contract;

/// <summary>A command's document and the API's are one: both call the same use case and write it with the same writer.</summary>
public sealed class SameAnswerTests
{
    /// <summary>Routes that take entries or say how the program is: they answer no document of a file format.</summary>
    private static readonly string[] s_entries =
    [
        "/api/health",
        "/api/now",
        "/api/meters/{name}",
        "/api/counts/{batch}",
        "/api/pieces/told",
        "/api/batches/{id:guid}/coils",
        "/api/batches/{id:guid}/events",
        "/api/batches/{id:guid}/undo",
    ];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_command_and_the_api_answer_the_same_document_where_both_exist()
    {
        await using DemoShop shop = await DemoShop.MakeAsync();
        await using WebApplication app = WebHost.Build(["http://127.0.0.1:0"], shop.Opened.Records, TimeProvider.System);
        await app.StartAsync(Cancel);
        using HttpClient client = new() { BaseAddress = new Uri(app.Urls.Single()), Timeout = TimeSpan.FromMinutes(5) };
        IReadOnlyDictionary<string, string> files = JsonCommandLines.Files(shop.Write, DemoShop.Root, shop.File);

        List<string> compared = [];
        foreach (string route in Documents(app))
        {
            string command = route["/api/".Length..];
            foreach (string line in JsonCommandLines.All.Where(line => line.StartsWith(command + " ", StringComparison.Ordinal)))
            {
                string[] words = JsonCommandLines.Words(line, DemoShop.Root, files);
                (int exit, string output, string error) = await DemoShop.RunAsync(words);
                Assert.True(exit == 0, error);
                using JsonContent question = Question(words);
                using HttpResponseMessage answer = await client.PostAsync(new Uri(route, UriKind.Relative), question, Cancel);
                Assert.Equal(output.TrimEnd(), await answer.Content.ReadAsStringAsync(Cancel));
                compared.Add(command);
            }
        }

        Assert.Equal(Documents(app).Select(route => route["/api/".Length..]), compared.Distinct());
        Assert.Contains("predict", compared);
    }

    private static string[] Documents(WebApplication app) =>
        [
            .. app
                .Services.GetRequiredService<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Select(one => one.RoutePattern.RawText ?? "")
                .Where(route => route.StartsWith("/api/", StringComparison.Ordinal) && !s_entries.Contains(route))
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>The files of a command line as the API takes them: the first as the recipe, an option's under its name.</summary>
    private static JsonContent Question(string[] words)
    {
        JsonObject question = new() { ["recipe"] = JsonNode.Parse(File.ReadAllText(words[1])) };
        for (int at = 2; at + 1 < words.Length; at++)
        {
            if (words[at] == "--load")
            {
                question["load"] = JsonNode.Parse(File.ReadAllText(words[at + 1]));
            }
        }

        return JsonContent.Create(question);
    }
}
