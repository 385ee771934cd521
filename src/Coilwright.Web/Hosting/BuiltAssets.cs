using System.Collections.Frozen;
using System.Reflection;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace Coilwright.Web.Hosting;

/// <summary>The script and the style of the pages, carried inside the assembly.</summary>
public static class BuiltAssets
{
    private static readonly FrozenDictionary<string, Asset> s_assets = new Dictionary<string, Asset>
    {
        ["main.js"] = Load("main.js", "text/javascript; charset=utf-8"),
        ["main.css"] = Load("main.css", "text/css; charset=utf-8"),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private sealed record Asset(byte[] Content, string ContentType, EntityTagHeaderValue Tag);

    public static void MapBuiltAssets(this IEndpointRouteBuilder app) => app.MapGet("/built/{name}", Serve);

    private static IResult Serve(string name, HttpContext context)
    {
        if (!s_assets.TryGetValue(name, out Asset? asset))
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "no-cache";
        return Results.Bytes(asset.Content, asset.ContentType, entityTag: asset.Tag);
    }

    private static Asset Load(string name, string contentType)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("built/" + name)
            ?? throw new InvalidOperationException($"The page file {name} is missing from the program: build it again.");
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        byte[] content = copy.ToArray();
        string hash = Convert.ToHexStringLower(SHA256.HashData(content))[..16];
        return new Asset(content, contentType, new EntityTagHeaderValue($"\"{hash}\""));
    }
}
