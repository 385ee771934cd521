using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using Coilwright.Web.Endpoints;
using Coilwright.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.WebEncoders;

namespace Coilwright.Web;

/// <summary>Makes the web program that serves one shop's pages.</summary>
public static class WebHost
{
    /// <summary>Builds the host; the caller starts and stops it.</summary>
    /// <param name="urls">Addresses to listen on, for example "http://127.0.0.1:5210".</param>
    /// <param name="services">The shop.</param>
    public static WebApplication Build(string[] urls, ShopServices services)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ApplicationName = typeof(WebHost).Assembly.GetName().Name });
        builder.WebHost.UseUrls(urls);
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = 4 << 20;
        });
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton(services);
        builder.Services.AddRazorComponents();
        builder.Services.Configure<WebEncoderOptions>(encoder => encoder.TextEncoderSettings = new TextEncoderSettings(UnicodeRanges.All));
        builder.Services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.Encoder = JavaScriptEncoder.Create(UnicodeRanges.All);
            json.SerializerOptions.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
            json.SerializerOptions.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase));
        });
        WebApplication app = builder.Build();
        app.UseMiddleware<SecurityHeaders>();
        app.UseMiddleware<OurMistake>();
        app.UseMiddleware<SameOrigin>();
        app.MapBuiltAssets();
        app.MapToday();
        app.MapRecipes();
        app.MapCompare();
        app.MapSolve();
        app.MapVariants();
        app.MapSetUp();
        app.MapSections();
        app.MapBatches();
        app.MapWinding();
        app.MapCorrections();
        app.MapCharts();
        app.MapStock();
        app.MapAssembly();
        app.MapSets();
        app.MapClocks();
        app.MapPieces();
        app.MapTold();
        app.MapPiecePapers();
        app.MapShop();
        app.MapApi();
        app.MapFallback(Answers.NotFoundPage);
        return app;
    }
}
