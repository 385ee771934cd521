using System.CommandLine;
using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Commands;

/// <summary>coilwright respond RECIPE-or-LUMPED: gain, phase and impedance against frequency.</summary>
public static class RespondCommand
{
    private const int MostPoints = 1_000_000;

    /// <summary>Frequencies a recipe's series branch is solved at; it is smooth between them.</summary>
    private static readonly double[] s_branchHz = [20, 50, 120, 300, 600, 1_000, 1_500, 2_200, 3_300, 4_700, 6_800, 10_000, 14_000, 20_000];

    public static Command Build(Desk desk)
    {
        Argument<string> pickup = new("RECIPE-or-LUMPED") { Description = "A recipe (coilwright.recipe/1) or a measured pickup (coilwright.lumped/1); - reads standard input" };
        Option<string?> load = new("--load") { Description = "A load file (coilwright.load/1); nothing hangs on the pickup unless said", HelpName = "LOAD" };
        Option<string?> from = new("--from") { Description = "Lowest frequency; 20 Hz unless said", HelpName = "FREQUENCY" };
        Option<string?> to = new("--to") { Description = "Highest frequency; 20 kHz unless said", HelpName = "FREQUENCY" };
        Option<int> points = new("--points") { Description = "Points, evenly spread on a logarithmic axis", DefaultValueFactory = _ => 400 };
        Option<bool> csv = new("--csv") { Description = "Write a table" }, json = new("--json") { Description = "Write coilwright.response/1" };
        Command command = new("respond", "Response and impedance, with the peak and −3 dB") { pickup, load, from, to, points, csv, json };
        command.SetAction(async (parsed, cancel) =>
        {
            TypedOptions typed = new();
            double fromHz = typed.Quantity("--from", parsed.GetValue(from), QuantityKind.Frequency, 1, 1e6, 20), toHz = typed.Quantity("--to", parsed.GetValue(to), QuantityKind.Frequency, 1, 1e6, 20_000);
            int count = parsed.GetValue(points);
            CheckRange(typed, fromHz, toHz, count, both: parsed.GetValue(csv) && parsed.GetValue(json));
            typed.RefuseIfWrong();
            string path = parsed.GetRequiredValue(pickup), text = await InputFile.ReadAsync(path, cancel).ConfigureAwait(false);
            LoadCircuit circuit = await RecipeFile.ReadLoadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false) ?? LoadCircuit.None;
            Source source = IsLumped(text) ? FromLumped(text, path) : FromRecipe(text, path, cancel);
            ResponseAnswer answer = Answer(source, circuit, fromHz, toHz, count);
            if (parsed.GetValue(json))
            {
                await desk.Output.WriteLineAsync(ResponseText.Json(answer)).ConfigureAwait(false);
            }
            else if (parsed.GetValue(csv))
            {
                await desk.Output.WriteAsync(ResponseText.Csv(answer)).ConfigureAwait(false);
            }
            else
            {
                ResponseText.Plain(desk.Output, source.Name, answer);
            }

            return ExitCode.Done;
        });
        return command;
    }

    private static void CheckRange(TypedOptions typed, double fromHz, double toHz, int count, bool both)
    {
        if (fromHz >= toHz)
        {
            typed.Add("--to", "must be above --from", QuantityText.Format(toHz, QuantityKind.Frequency), "above " + QuantityText.Format(fromHz, QuantityKind.Frequency));
        }

        if (count is < 2 or > MostPoints)
        {
            typed.Add("--points", "outside the allowed range", count.ToString(System.Globalization.CultureInfo.InvariantCulture), "2 to 1,000,000");
        }

        if (both)
        {
            typed.Add("--csv", "choose one of --csv and --json");
        }
    }

    private sealed record Source(string Name, ISeriesBranch Branch, double CapacitanceF, double? LossOhm);

    private static bool IsLumped(string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
            return document.RootElement.ValueKind == JsonValueKind.Object && document.RootElement.TryGetProperty("format", out JsonElement format)
                && format.ValueKind == JsonValueKind.String && format.GetString()!.StartsWith("coilwright.lumped/", StringComparison.Ordinal);
        }
        catch (JsonException)
        {
            return false; // the recipe reader says what is wrong with it
        }
    }

    private static Source FromLumped(string text, string path)
    {
        LumpedPickup lumped = LumpedReader.Read(text).OrRefuse(path);
        return new Source(path, lumped, lumped.CapacitanceF, lumped.ParallelLossOhm);
    }

    private static Source FromRecipe(string text, string path, CancellationToken cancel)
    {
        RecipeFile file = RecipeFile.FromText(text, path);
        PickupForecast pickup = Forecaster.Predict(file.Model, load: null, new ForecastOptions { FrequenciesHz = s_branchHz }, cancel).Pickup;
        TabulatedBranch branch = new([.. pickup.Spectrum.Select(line => line.FrequencyHz)], [.. pickup.Spectrum.Select(line => line.Inductance.Value)], [.. pickup.Spectrum.Select(line => line.Resistance.Value)]);
        return new Source(file.Recipe.Name, branch, pickup.Capacitance.Value, null);
    }

    private static ResponseAnswer Answer(Source source, LoadCircuit load, double fromHz, double toHz, int count)
    {
        Response response = PickupResponse.Compute(source.Branch, source.CapacitanceF, source.LossOhm, load, PickupResponse.LogFrequencies(fromHz, toHz, count));
        if (response.IsSilent)
        {
            throw new WrongInputException("--load", [new Problem("volume.setting", "nothing arrives: the volume control is shut", "0", "above 0, up to 1")]);
        }

        return new ResponseAnswer(
            [.. response.Points.Select(point => new ResponseLine(point.FrequencyHz, point.GainDb, point.PhaseDegrees, point.ImpedanceOhm))],
            PickupResponse.FindPeak(source.Branch, source.CapacitanceF, source.LossOhm, load),
            PickupResponse.FindMinus3Db(source.Branch, source.CapacitanceF, source.LossOhm, load));
    }
}
