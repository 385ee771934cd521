using System.CommandLine;
using Coilwright.Application.Curves;
using Coilwright.Application.Listening;
using Coilwright.Formats.Listening;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Measuring;

namespace Coilwright.Commands;

/// <summary>coilwright listen: a plucked string through a pickup, or a recording as another pickup would have given it.</summary>
public static class ListenCommand
{
    private sealed record Options(
        Argument<string?> Pickup,
        Option<string?> Load,
        Option<int?> Number,
        Option<string?> Pitch,
        Option<string?> Pluck,
        Option<string?> Width,
        Option<string?> Length,
        Option<string?> From,
        Option<string?> To,
        Option<string?> In,
        Option<string?> Wav,
        Option<bool> Json
    );

    public static Command Build(CommandContext desk)
    {
        Options options = Made();
        Command command = new("listen", "Hear a plucked string through a pickup, or a recording as another pickup would have given it")
        {
            options.Pickup,
            options.Load,
            options.Number,
            options.Pitch,
            options.Pluck,
            options.Width,
            options.Length,
            options.From,
            options.To,
            options.In,
            options.Wav,
            options.Json,
        };
        command.SetAction(
            (parsed, cancel) =>
            {
                Check(options, parsed);
                return parsed.GetValue(options.In) is null
                    ? PluckAsync(desk, options, parsed, cancel)
                    : RevoiceAsync(desk, options, parsed, cancel);
            }
        );
        return command;
    }

    private static Options Made() =>
        new(
            new Argument<string?>("RECIPE-or-LUMPED")
            {
                Description = "A recipe, a measured pickup or a whole circuit; - reads standard input",
                Arity = ArgumentArity.ZeroOrOne,
            },
            new("--load") { Description = "A load file (coilwright.load/1); nothing hangs on the pickup unless said", HelpName = "LOAD" },
            new Option<int?>("--string")
            {
                Description = "Which string, 1 at the lowest x; the one whose open pitch is nearest unless said",
                HelpName = "N",
            }.AsCount(),
            new("--pitch") { Description = "Pitch to play; the open string unless said", HelpName = "FREQUENCY" },
            new("--pluck") { Description = "Place of the pluck from the bridge; 120 mm unless said", HelpName = "LENGTH" },
            new("--width") { Description = "Width of what plucks; a sharp corner unless said", HelpName = "LENGTH" },
            new("--length") { Description = "Length of the sound; 5 s unless said", HelpName = "TIME" },
            new("--from") { Description = "The pickup that a recording was made with", HelpName = "DESIGN" },
            new("--to") { Description = "The pickup that it shall sound like", HelpName = "DESIGN" },
            new("--in") { Description = "The recording: a dry WAV file", HelpName = "FILE" },
            new("--wav") { Description = "The WAV file to write", HelpName = "FILE" },
            new("--json") { Description = "Write coilwright.listening/1" }
        );

    private static void Check(Options options, ParseResult parsed)
    {
        OptionReader typed = new();
        bool pluck = parsed.GetValue(options.Pickup) is not null,
            revoice = new[] { options.From, options.To, options.In }.Any(option => parsed.GetValue(option) is not null);
        if (string.IsNullOrWhiteSpace(parsed.GetValue(options.Wav)))
        {
            typed.Add("--wav", "which file shall be written?");
        }

        if (pluck == revoice)
        {
            typed.Add("RECIPE-or-LUMPED", "give a pickup to pluck a string over it, or --from, --to and --in for a recording");
        }

        if (revoice)
        {
            CheckRevoicing(options, parsed, typed);
        }

        typed.RefuseIfWrong();
    }

    private static void CheckRevoicing(Options options, ParseResult parsed, OptionReader typed)
    {
        foreach (Option<string?> option in new[] { options.From, options.To, options.In }.Where(one => parsed.GetValue(one) is null))
        {
            typed.Add(option.Name, "is needed for a recording");
        }

        Option<string?>[] ofPluck = [options.Pitch, options.Pluck, options.Width, options.Length];
        foreach (Option<string?> option in ofPluck.Where(one => parsed.GetValue(one) is not null))
        {
            typed.Add(option.Name, "is for a plucked string, not for a recording");
        }

        if (parsed.GetValue(options.Number) is not null)
        {
            typed.Add(options.Number.Name, "is for a plucked string, not for a recording");
        }

        if (parsed.GetValue(options.Json))
        {
            typed.Add(options.Json.Name, "tells of a plucked string, not of a recording");
        }
    }

    private static async Task<int> PluckAsync(CommandContext desk, Options options, ParseResult parsed, CancellationToken cancel)
    {
        OptionReader typed = new();
        double? Read(Option<string?> option, Limits limits) =>
            parsed.GetValue(option) is { } text ? typed.Quantity(option.Name, text, limits.Kind, limits.Min, limits.Max, limits.Min) : null;
        PluckQuestion asked = new(
            parsed.GetValue(options.Number),
            Read(options.Pitch, PluckLimits.Pitch),
            Read(options.Pluck, PluckLimits.Pluck),
            Read(options.Width, PluckLimits.Width),
            Read(options.Length, PluckLimits.Length)
        );
        typed.RefuseIfWrong();
        LoadCircuit? load = await RecipeFile.ReadLoadAsync(parsed.GetValue(options.Load), cancel).ConfigureAwait(false);
        ResponseSource source = await SourceAsync(parsed.GetValue(options.Pickup)!, load, cancel).ConfigureAwait(false);
        HeardSound heard = desk.Use<HearPluck>().Hear(source, asked, cancel).OrRefuseOptions(OptionOf);
        string path = parsed.GetValue(options.Wav)!;
        await SoundFile.WriteAsync(path, heard.Wave, cancel).ConfigureAwait(false);
        bool json = parsed.GetValue(options.Json);
        await desk
            .Output.WriteLineAsync(json ? ListeningJson.Write(heard.Answer) : ListeningFormatter.Write(heard.Answer, path))
            .ConfigureAwait(false);
        return ExitCode.Done;
    }

    private static async Task<int> RevoiceAsync(CommandContext desk, Options options, ParseResult parsed, CancellationToken cancel)
    {
        LoadCircuit? load = await RecipeFile.ReadLoadAsync(parsed.GetValue(options.Load), cancel).ConfigureAwait(false);
        ResponseSource from = await SourceAsync(parsed.GetValue(options.From)!, load, cancel).ConfigureAwait(false),
            to = await SourceAsync(parsed.GetValue(options.To)!, load, cancel).ConfigureAwait(false);
        Bench.WaveFile recording = await SoundFile.ReadAsync(parsed.GetValue(options.In)!, cancel).ConfigureAwait(false);
        RevoicedSound sound = desk.Use<Revoice>().Exchange(from, to, recording).OrRefuseOptions(OptionOf);
        string path = parsed.GetValue(options.Wav)!;
        await SoundFile.WriteAsync(path, sound.Wave(), cancel).ConfigureAwait(false);
        await desk.Output.WriteLineAsync(ListeningFormatter.Write(sound, path)).ConfigureAwait(false);
        return ExitCode.Done;
    }

    private static string OptionOf(string field) =>
        field is "string" or "pitch" or "pluck" or "from" or "to" or "in" ? "--" + field : "--load " + field;

    private static async Task<ResponseSource> SourceAsync(string path, LoadCircuit? load, CancellationToken cancel) =>
        ResponseSource.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false), path, load, cancel).OrRefuse(path);
}
