using System.Globalization;
using System.Text.Json;
using Coilwright.Analysis.Curves;
using Coilwright.Analysis.Forecasts;
using Coilwright.Formats.Circuits;
using Coilwright.Input;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Commands;

/// <summary>What `respond` was given: a recipe, a measured pickup, or a whole circuit; each on its load.</summary>
internal sealed class ResponseSource
{
    private readonly ISeriesBranch? _branch;
    private readonly double _capacitanceF;
    private readonly double? _lossOhm;
    private readonly LoadCircuit _load;
    private readonly GuitarCircuit _circuit;

    private ResponseSource(string name, ISeriesBranch branch, double capacitanceF, double? lossOhm, LoadCircuit load)
    {
        (Name, _branch, _capacitanceF, _lossOhm, _load) = (name, branch, capacitanceF, lossOhm, load);
        _circuit = GuitarCircuit.FromCoil(branch, capacitanceF, lossOhm, load);
    }

    private ResponseSource(string name, GuitarCircuit circuit) => (Name, _circuit, _load) = (name, circuit, circuit.Load);

    public string Name { get; }

    /// <summary>Reads a file; a load given beside a circuit takes the place of the circuit's own.</summary>
    public static async Task<ResponseSource> ReadAsync(string path, LoadCircuit? load, CancellationToken cancel)
    {
        string text = await InputFile.ReadAsync(path, cancel).ConfigureAwait(false);
        string format = FormatOf(text);
        if (format.StartsWith("coilwright.circuit/", StringComparison.Ordinal))
        {
            GuitarCircuit circuit = CircuitReader.Read(text).OrRefuse(path);
            return new ResponseSource(path, load is null ? circuit : circuit with { Load = load });
        }

        if (format.StartsWith("coilwright.lumped/", StringComparison.Ordinal))
        {
            LumpedPickup lumped = LumpedReader.Read(text).OrRefuse(path);
            return new ResponseSource(path, lumped, lumped.CapacitanceF, lumped.ParallelLossOhm, load ?? LoadCircuit.None);
        }

        RecipeFile file = RecipeFile.FromText(text, path);
        ForecastBranch pickup = ForecastBranch.Forecast(file.Model, cancel);
        return new ResponseSource(file.Recipe.Name, pickup.Branch, pickup.CapacitanceF, null, load ?? LoadCircuit.None);
    }

    /// <summary>Points at the frequencies asked for; refuses when nothing arrives.</summary>
    public Response Compute(double[] frequenciesHz)
    {
        Response response = _branch is { } branch
            ? PickupResponse.Compute(branch, _capacitanceF, _lossOhm, _load, frequenciesHz)
            : CircuitResponse.Compute(_circuit, frequenciesHz);
        if (!response.IsSilent)
        {
            return response;
        }

        throw _load.Volume is { Setting: <= 0 }
            ? new WrongInputException(
                "--load",
                [new Problem("volume.setting", "nothing arrives: the volume control is shut", "0", "above 0, up to 1")]
            )
            : new WrongInputException(
                Name,
                [
                    new Problem(
                        "",
                        "nothing arrives at 20 Hz: a control is shut, or the pickups cancel there; gains are relative to that level"
                    ),
                ]
            );
    }

    public ResonancePeak? FindPeak() =>
        _branch is { } branch ? PickupResponse.FindPeak(branch, _capacitanceF, _lossOhm, _load) : CircuitResponse.FindPeak(_circuit);

    public double? FindMinus3Db() =>
        _branch is { } branch
            ? PickupResponse.FindMinus3Db(branch, _capacitanceF, _lossOhm, _load)
            : CircuitResponse.FindMinus3Db(_circuit);

    /// <summary>Thermal noise at the output, dBV, 20 Hz to 20 kHz at 20 °C.</summary>
    public double NoiseDbv() => 20 * Math.Log10(CircuitResponse.ThermalNoiseV(_circuit));

    /// <summary>The circuit in SPICE syntax; a recipe's table of L(f) and R(f) is written as the parts that fit it best.</summary>
    public string Netlist(double fromHz, double toHz, int points)
    {
        if (_branch is null or LumpedPickup)
        {
            return _branch is LumpedPickup lumped && _load.IsPlain
                ? SpiceNetlist.Write(lumped, _load, fromHz, toHz, points)
                : CircuitNetlist.Write(_circuit, fromHz, toHz, points);
        }

        (LumpedPickup fitted, double worst) = BranchLadder.Fit(_branch, _capacitanceF);
        GuitarCircuit circuit = GuitarCircuit.FromCoil(fitted with { CapacitanceF = 0 }, _capacitanceF, _lossOhm, _load);
        return CircuitNetlist.Write(
            circuit,
            fromHz,
            toHz,
            points,
            [
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"L(f) and R(f) of the recipe as R, L and {fitted.Eddy.Count} eddy branches; their impedance differs by at most "
                        + $"{100 * worst:0.00} % from 20 Hz to 20 kHz"
                ),
            ]
        );
    }

    private static string FormatOf(string text)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(
                text,
                new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }
            );
            return
                document.RootElement.ValueKind == JsonValueKind.Object
                && document.RootElement.TryGetProperty("format", out JsonElement format)
                && format.ValueKind == JsonValueKind.String
                ? format.GetString()!
                : "";
        }
        catch (JsonException)
        {
            return ""; // the recipe reader says what is wrong with it
        }
    }
}
