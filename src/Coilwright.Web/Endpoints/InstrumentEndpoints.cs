using System.Text.Json.Nodes;
using Coilwright.Application.Composition;
using Coilwright.Application.Instruments;
using Coilwright.Bench.Meters;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Hosting;

namespace Coilwright.Web.Endpoints;

/// <summary>The shop's instruments: which there are, whether one answers, and what it shows just now.</summary>
internal static class InstrumentEndpoints
{
    /// <summary>What a bench computer passes on.</summary>
    /// <param name="Kind">"live", "standing", "off" or "trouble".</param>
    /// <param name="Value">The value in the unit of its kind; left out when there is none.</param>
    /// <param name="Raw">The line as it came.</param>
    /// <param name="Id">Of a standing value: made once where it was read.</param>
    /// <param name="Message">What is wrong, of a trouble.</param>
    public sealed record Passed(string Kind, double? Value = null, string Raw = "", Guid? Id = null, string Message = "");

    public static void MapInstruments(this IEndpointRouteBuilder app)
    {
        app.MapGet("/shop/instruments", async (string? saved, ShopServices shop, CancellationToken cancel) =>
            await PageAsync(shop, FormValues.Nothing, [], null, saved is not null, cancel)
        );
        app.MapPost("/shop/instruments", KeepAsync);
        app.MapPost("/shop/instruments/remove", RemoveAsync);
        app.MapPost("/shop/instruments/try", TryAsync);
        app.MapGet("/api/meters/{name}", ShownAsync);
        app.MapPost("/api/meters/{name}", PassAsync);
    }

    private static async Task<IResult> PageAsync(
        ShopServices shop,
        FormValues typed,
        IReadOnlyList<Problem> problems,
        InstrumentTrial? trial,
        bool saved,
        CancellationToken cancel
    ) =>
        Answers.Page<InstrumentsPage>(
            new()
            {
                ["Instruments"] = (await shop.Pieces.Shelf.Rules.CurrentAsync(cancel)).Instruments,
                ["Typed"] = typed,
                ["Problems"] = problems,
                ["Trial"] = trial,
                ["Saved"] = saved,
            },
            Answers.StatusOf(problems)
        );

    private static async Task<IResult> KeepAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        (JsonObject? instrument, IReadOnlyList<Problem> wrong) = InstrumentForm.Read(typed);
        IReadOnlyList<Problem> problems = instrument is null
            ? wrong
            : await shop.Pieces.Shelf.Rules.KeepInstrumentAsync(typed.Id, instrument, typed["person"], cancel);
        return problems.Count == 0
            ? Results.LocalRedirect("/shop/instruments?saved=yes")
            : await PageAsync(shop, typed, problems, null, saved: false, cancel);
    }

    private static async Task<IResult> RemoveAsync(HttpRequest request, ShopServices shop, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        await shop.Pieces.Shelf.Rules.RemoveInstrumentAsync(typed.Id, typed["instrument"], typed["person"], cancel);
        return Results.LocalRedirect("/shop/instruments?saved=yes");
    }

    private static async Task<IResult> TryAsync(HttpRequest request, ShopServices shop, ReadMeter read, CancellationToken cancel)
    {
        FormValues typed = new(await request.ReadFormAsync(cancel));
        if (await FindAsync(shop, typed["instrument"], cancel) is not { } instrument)
        {
            return Results.LocalRedirect("/shop/instruments");
        }

        return await PageAsync(shop, FormValues.Nothing, [], await TrialOfAsync(instrument, read, cancel), saved: false, cancel);
    }

    private static async Task<InstrumentTrial> TrialOfAsync(ShopInstrument instrument, ReadMeter read, CancellationToken cancel)
    {
        if (instrument.Address is not { } address)
        {
            return new InstrumentTrial(instrument.Name, "", "", "it hangs on a bench computer, which passes its readings on");
        }

        try
        {
            MeterReadingOutcome outcome = await read.ReadAsync(instrument.Profile, address, cancel);
            return new InstrumentTrial(instrument.Name, outcome.Answer.Raw, outcome.Answer.Words, outcome.Note);
        }
        catch (InstrumentException fault)
        {
            return new InstrumentTrial(instrument.Name, fault.Raw, "", fault.Message);
        }
    }

    private static async Task<IResult> ShownAsync(
        string name,
        long? after,
        ShopServices shop,
        MeterBench bench,
        IHostApplicationLifetime life,
        CancellationToken cancel
    )
    {
        if (await FindAsync(shop, name, cancel) is not { } instrument)
        {
            return Unknown(name);
        }

        return await Answers.NextAsync((patience, ends) => bench.NextAsync(instrument, after ?? 0, patience, ends), life, cancel);
    }

    private static async Task<IResult> PassAsync(
        string name,
        HttpRequest request,
        ShopServices shop,
        MeterBench bench,
        CancellationToken cancel
    )
    {
        (Passed? passed, IResult? refused) = await ApiBody.ReadAsync<Passed>(request, cancel);
        if (passed is null)
        {
            return refused!;
        }

        if (await FindAsync(shop, name, cancel) is not { } instrument)
        {
            return Unknown(name);
        }

        if (SightOf(passed, instrument.Profile) is not { } sight)
        {
            Problem wrong = new("kind", "is not what an instrument shows", passed.Kind, "live or standing with a value, off, trouble");
            return Answers.Told(StatusCodes.Status422UnprocessableEntity, wrong);
        }

        bench.Pass(instrument.Name, sight);
        return Answers.Told(StatusCodes.Status200OK);
    }

    private static MeterSight? SightOf(Passed passed, MeterProfile profile)
    {
        MeterAnswer answer = new(profile.Quantity, profile.Kind, passed.Value, passed.Raw);
        return (passed.Kind, passed.Value) switch
        {
            ("live", { } value) when double.IsFinite(value) => new MeterSight.Live(answer),
            ("standing", { } value) when double.IsFinite(value) => new MeterSight.Standing(passed.Id ?? Guid.NewGuid(), answer),
            ("off", null) => new MeterSight.Off(answer),
            ("trouble", _) => new MeterSight.Trouble(new InstrumentException(InstrumentTrouble.Silent, passed.Message, passed.Raw)),
            _ => null,
        };
    }

    private static async Task<ShopInstrument?> FindAsync(ShopServices shop, string name, CancellationToken cancel) =>
        (await shop.Pieces.Shelf.Rules.CurrentAsync(cancel)).Instruments.FirstOrDefault(one => NameKey.Same(one.Name, name));

    private static IResult Unknown(string name)
    {
        Problem unknown = new("name", "no instrument of this name is in the shop", name, "one that stands under Shop, Instruments");
        return Answers.Told(StatusCodes.Status404NotFound, unknown);
    }
}
