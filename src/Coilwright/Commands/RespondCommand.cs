using System.CommandLine;
using Coilwright.Application.Curves;
using Coilwright.Formats.Responses;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>coilwright respond RECIPE-or-LUMPED: gain, phase and impedance against frequency.</summary>
public static class RespondCommand
{
    private const int MostPoints = 1_000_000;

    public static Command Build(CommandContext desk)
    {
        Argument<string> pickup = new("RECIPE-or-LUMPED")
        {
            Description =
                "A recipe (coilwright.recipe/1), a measured pickup (coilwright.lumped/1) or a whole circuit "
                + "(coilwright.circuit/1); - reads standard input",
        };
        Option<string?> load = new("--load")
        {
            Description = "A load file (coilwright.load/1); nothing hangs on the pickup unless said; takes the place of a circuit's own",
            HelpName = "LOAD",
        };
        Option<string?> from = new("--from") { Description = "Lowest frequency; 20 Hz unless said", HelpName = "FREQUENCY" };
        Option<string?> to = new("--to") { Description = "Highest frequency; 20 kHz unless said", HelpName = "FREQUENCY" };
        Option<int> points = new Option<int>("--points")
        {
            Description = "Points, evenly spread on a logarithmic axis",
            DefaultValueFactory = _ => 400,
        }.AsCount();
        Option<string?> mark = new("--mark")
        {
            Description = "Frequencies whose level is told, for example 3kHz,5kHz",
            HelpName = "FREQUENCIES",
        };
        Option<string?> against = new("--against")
        {
            Description = "A second recipe, measured pickup or circuit on the same load: the change from it is told",
            HelpName = "FILE",
        };
        Option<bool> refine = new("--refine") { Description = "Add points round the peak" };
        Option<bool> csv = new("--csv") { Description = "Write a table" },
            json = new("--json") { Description = "Write coilwright.response/1" },
            netlist = new("--netlist") { Description = "Write the circuit in SPICE syntax" };
        Command command = new("respond", "Response and impedance, with the peak and −3 dB")
        {
            pickup,
            load,
            from,
            to,
            points,
            mark,
            against,
            refine,
            csv,
            json,
            netlist,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                OptionReader typed = new();
                double fromHz = typed.Quantity("--from", parsed.GetValue(from), QuantityKind.Frequency, 1, 1e6, 20),
                    toHz = typed.Quantity("--to", parsed.GetValue(to), QuantityKind.Frequency, 1, 1e6, 20_000);
                int count = parsed.GetValue(points);
                bool asJson = parsed.GetValue(json),
                    asCsv = parsed.GetValue(csv),
                    asNetlist = parsed.GetValue(netlist);
                CheckRange(typed, fromHz, toHz, count, oneForm: (asJson ? 1 : 0) + (asCsv ? 1 : 0) + (asNetlist ? 1 : 0) <= 1);
                IReadOnlyList<double> marksHz = typed.Frequencies("--mark", parsed.GetValue(mark), 1, 1e6) ?? [];
                typed.RefuseIfWrong();
                LoadCircuit? circuit = await RecipeFile.ReadLoadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false);
                ResponseSource source = await SourceAsync(parsed.GetRequiredValue(pickup), circuit, cancel).ConfigureAwait(false);
                if (asNetlist)
                {
                    await desk.Output.WriteAsync(source.Netlist(fromHz, toHz, count)).ConfigureAwait(false);
                    return ExitCode.Done;
                }

                ResponseSource? other = parsed.GetValue(against) is { } path
                    ? await SourceAsync(path, circuit, cancel).ConfigureAwait(false)
                    : null;
                ResponseOutcome outcome = desk.Use<RespondToLoad>()
                    .Respond(source, other, PickupResponse.LogFrequencies(fromHz, toHz, count), marksHz, parsed.GetValue(refine));
                ResponseAnswer answer = outcome.Answer ?? throw new WrongInputException(outcome.Silent, [outcome.Why!]);
                if (asJson)
                {
                    await desk.Output.WriteLineAsync(ResponseJson.Write(answer)).ConfigureAwait(false);
                }
                else if (asCsv)
                {
                    await desk.Output.WriteAsync(ResponseCsv.Write(answer)).ConfigureAwait(false);
                }
                else
                {
                    ResponseFormatter.Write(desk.Output, source.Name, answer);
                }

                return ExitCode.Done;
            }
        );
        return command;
    }

    private static void CheckRange(OptionReader typed, double fromHz, double toHz, int count, bool oneForm)
    {
        if (fromHz >= toHz)
        {
            typed.Add(
                "--to",
                "must be above --from",
                QuantityParser.Format(toHz, QuantityKind.Frequency),
                "above " + QuantityParser.Format(fromHz, QuantityKind.Frequency)
            );
        }

        if (count is < 2 or > MostPoints)
        {
            typed.Add(
                "--points",
                "outside the allowed range",
                count.ToString(System.Globalization.CultureInfo.InvariantCulture),
                "2 to 1,000,000"
            );
        }

        if (!oneForm)
        {
            typed.Add("--csv", "choose one of --csv, --json and --netlist");
        }
    }

    private static async Task<ResponseSource> SourceAsync(string path, LoadCircuit? load, CancellationToken cancel) =>
        ResponseSource.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false), path, load, cancel).OrRefuse(path);
}
