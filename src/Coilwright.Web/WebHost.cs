using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using Coilwright.Application.Backups;
using Coilwright.Application.Composition;
using Coilwright.Application.Instruments;
using Coilwright.Application.Shops;
using Coilwright.Web.Endpoints;
using Coilwright.Web.Hosting;
using Coilwright.Web.Hosting.Access;
using Coilwright.Web.Views;
using Coilwright.Web.Views.Recipes;
using Coilwright.Workshop;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.WebEncoders;

namespace Coilwright.Web;

/// <summary>Makes the web program that serves one shop's pages.</summary>
public static class WebHost
{
    /// <summary>Builds the host; the caller starts and stops it.</summary>
    /// <param name="urls">Addresses to listen on, for example "http://127.0.0.1:5210".</param>
    /// <param name="records">The shop's records; whoever opened them closes them after the host.</param>
    /// <param name="time">The clock.</param>
    /// <param name="options">What it is told beside the shop.</param>
    /// <remarks>
    /// No file and no variable of the environment is asked for settings: one that lies in the folder where the server is started could open
    /// the shop to the network.
    /// </remarks>
    public static WebApplication Build(string[] urls, IShopRecords records, TimeProvider time, ServingOptions? options = null)
    {
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(
            new WebApplicationOptions
            {
                ApplicationName = typeof(WebHost).Assembly.GetName().Name,
                ContentRootPath = AppContext.BaseDirectory,
            }
        );
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().UseUrls(urls);
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            if (options?.Certificate is { } certificate)
            {
                server.ConfigureHttpsDefaults(https => https.ServerCertificate = certificate);
            }

            server.Limits.MaxRequestBodySize = 4 << 20;
        });
        builder.Services.AddRouting();
        builder.Services.Configure<FormOptions>(form =>
        {
            form.ValueCountLimit = FormLimits.MostFields;
            form.KeyLengthLimit = FormLimits.LongestName;
        });
        builder.Services.AddCoilwright(records, time);
        builder.Services.AddSingleton(new DemoOffer(options?.Demo));
        builder.Services.AddSingleton<RoomLine>();
        builder.Services.AddSingleton<MeterBench>();
        builder.Services.AddSingleton<CountBench>();
        AddBackups(builder.Services, options?.Backups);
        builder.Services.AddHostedService<SummaryKeeper>();
        builder.Services.AddSingleton<ShapeCards>();
        builder.Services.AddSingleton<ShowRecipe>();
        builder.Services.AddRazorComponents();
        builder.Services.AddRateLimiter(SignInLimit.Set);
        builder.Services.Configure<WebEncoderOptions>(encoder => encoder.TextEncoderSettings = new TextEncoderSettings(UnicodeRanges.All));
        builder.Services.ConfigureHttpJsonOptions(json =>
        {
            json.SerializerOptions.Encoder = JavaScriptEncoder.Create(UnicodeRanges.All);
            json.SerializerOptions.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
            json.SerializerOptions.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase));
        });
        WebApplication app = builder.Build();
        app.UseMiddleware<SecurityHeaders>();
        app.UseMiddleware<InternalErrorPage>();
        app.UseMiddleware<KnownHosts>(options?.Hosts ?? []);
        app.UseMiddleware<SameOrigin>();
        app.UseMiddleware<HeadAsGet>();
        app.UseRouting();
        app.UseRateLimiter();
        app.UseMiddleware<AccessGuard>();
        app.UseMiddleware<ReadableForms>();
        app.UseMiddleware<PersonOfAccount>();
        app.UseMiddleware<SecretGuard>();
        app.UseMiddleware<ClockGuard>();
        app.MapBuiltAssets();
        app.MapToday();
        app.MapRecipes();
        app.MapNewRecipe();
        app.MapCompare();
        app.MapListen();
        app.MapBlind();
        app.MapRecordings();
        app.MapSolve();
        app.MapSpread();
        app.MapVariants();
        app.MapSetUp();
        app.MapSections();
        app.MapBatchStart();
        app.MapBatches();
        app.MapBatchList();
        app.MapWinding();
        app.MapCorrections();
        app.MapCharts();
        app.MapStock();
        app.MapMachineForm();
        app.MapUnderstood();
        app.MapAssembly();
        app.MapSets();
        app.MapClocks();
        app.MapPieces();
        app.MapTold();
        app.MapPiecePapers();
        app.MapRecall();
        app.MapShop();
        app.MapRules();
        app.MapFiles();
        app.MapBackups();
        app.MapInstruments();
        app.MapSignIn();
        app.MapPeople();
        app.MapSecrets();
        app.MapCounts();
        app.MapHelp();
        app.MapLabels();
        app.MapMagnets();
        app.MapMeasure();
        app.MapMeasureFiles();
        if (options?.Demo is { } demo)
        {
            app.MapDemo(demo);
        }

        app.MapApi();
        app.MapFallback("{*path}", WrongMethod.AnswerAsync);
        return app;
    }

    private static void AddBackups(IServiceCollection services, BackupPlan? plan)
    {
        if (plan is null)
        {
            return;
        }

        services.AddSingleton(plan); // in place of the plan that every shop has
        if (plan.IsDaily)
        {
            services.AddHostedService<DailyBackup>();
        }
    }
}
