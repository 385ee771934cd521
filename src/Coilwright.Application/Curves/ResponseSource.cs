using System.Globalization;
using System.Numerics;
using System.Text.Json;
using Coilwright.Analysis.Curves;
using Coilwright.Analysis.Forecasts;
using Coilwright.Formats.Circuits;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Curves;

/// <summary>What a response is asked of: a recipe, a measured pickup, or a whole circuit; each on its load.</summary>
public sealed class ResponseSource
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

    /// <summary>The recipe's pickup; null for one that was measured and for a whole circuit.</summary>
    public PickupModel? Model { get; private init; }

    /// <summary>True when the volume control is shut.</summary>
    public bool IsShut => _load.Volume is { Setting: <= 0 };

    /// <summary>Reads a document; a load given beside a circuit takes the place of the circuit's own.</summary>
    /// <param name="text">A recipe, a measured pickup or a whole circuit.</param>
    /// <param name="path">What to call a document that has no name.</param>
    /// <param name="load">What hangs on it, or null.</param>
    /// <param name="cancel">Stops it.</param>
    public static ReadOutcome<ResponseSource> Read(string text, string path, LoadCircuit? load, CancellationToken cancel)
    {
        string format = FormatOf(text);
        if (format.StartsWith("coilwright.circuit/", StringComparison.Ordinal))
        {
            return Made(CircuitReader.Read(text), circuit => new ResponseSource(
                path,
                load is null ? circuit : circuit with { Load = load }
            ));
        }

        return format.StartsWith("coilwright.lumped/", StringComparison.Ordinal)
            ? Made(LumpedReader.Read(text), lumped => new ResponseSource(
                path,
                lumped,
                lumped.CapacitanceF,
                lumped.ParallelLossOhm,
                load ?? LoadCircuit.None
            ))
            : Made(RecipeReader.ReadFile(text), recipe => Of(recipe, load, cancel));
    }

    /// <summary>The same pickup on another load; a whole circuit keeps its pickups.</summary>
    /// <param name="load">What hangs on it.</param>
    public ResponseSource On(LoadCircuit load) =>
        _branch is { } branch
            ? new ResponseSource(Name, branch, _capacitanceF, _lossOhm, load) { Model = Model }
            : new ResponseSource(Name, _circuit with { Load = load });

    /// <summary>The response at the frequencies asked for.</summary>
    public Response Compute(double[] frequenciesHz) =>
        _branch is { } branch
            ? PickupResponse.Compute(branch, _capacitanceF, _lossOhm, _load, frequenciesHz)
            : CircuitResponse.Compute(_circuit, frequenciesHz);

    /// <summary>Output over the voltage that the string induces, with its phase, at frequencies in Hz; null when nothing arrives.</summary>
    public IReadOnlyList<Complex>? Gains(double[] frequenciesHz)
    {
        Response response = Compute(frequenciesHz);
        return response.IsSilent
            ? null
            :
            [
                .. response.Points.Select(point =>
                    Complex.FromPolarCoordinates(
                        response.LowFrequencyGain * Math.Pow(10, point.GainDb / 20),
                        point.PhaseDegrees * Math.PI / 180
                    )
                ),
            ];
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

    /// <summary>A recipe's pickup.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="load">What hangs on it; null for nothing.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static ResponseSource Of(Recipe recipe, LoadCircuit? load, CancellationToken cancel)
    {
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        ForecastBranch pickup = ForecastBranch.Forecast(model, cancel);
        return new ResponseSource(recipe.Name, pickup.Branch, pickup.CapacitanceF, null, load ?? LoadCircuit.None) { Model = model };
    }

    private static ReadOutcome<ResponseSource> Made<T>(ReadOutcome<T> read, Func<T, ResponseSource> make)
        where T : class =>
        read is { Ok: true, Value: { } value }
            ? new ReadOutcome<ResponseSource>(make(value), [])
            : new ReadOutcome<ResponseSource>(null, read.Problems);

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
