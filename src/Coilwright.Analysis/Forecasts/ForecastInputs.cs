using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts;

/// <summary>The uncertain inputs of a forecast, and where each coil finds its own. Coils on the same wire share that wire's scatter.</summary>
internal sealed class ForecastInputs
{
    /// <summary>A counter is trusted to ±0.2 % when nothing else is known.</summary>
    private const double CounterInterval = 0.002;

    /// <summary>Wire lengthens a little on any winder; ± 0.5 % about what the recipe says.</summary>
    private const double StretchInterval = 0.005;

    private readonly List<UncertainInput> _all = [];
    private readonly Dictionary<string, (int Bare, int Overall, int OhmPerM)> _wires = [];

    public ForecastInputs(PickupModel model, IReadOnlyList<LayEstimate> lays)
    {
        Coils = [.. model.Coils.Select((coil, c) => Add(coil, lays[c], model.Coils.Count > 1 ? $" of coil {coil.Name}" : ""))];
        Cores = Append(new("cores: permeability and model", "1", new Estimate(1, 0, 2, Basis.Assumed), Scatter.Normal,
            "interval of the pole materials' permeability and the field model's own error"));
        Capacitance = Append(new("capacitance factor", "1", new Estimate(1, 1 / LayCapacitanceFactor, LayCapacitanceFactor, Basis.Assumed), Scatter.LogNormal,
            "enamel permittivity, real scatter, capacitance to poles and ground: a factor of 1.5 either way until a coil of the kind has been measured"));
        if (model.Coils.All(coil => coil.Winding.MeasuredCapacitanceF is not null))
        {
            _all[Capacitance] = _all[Capacitance] with { Estimate = Estimate.Within(1, 0.02, Basis.Measured), Source = "measured capacitance, ±2 %" };
        }
    }

    private const double LayCapacitanceFactor = 1.5;

    public IReadOnlyList<UncertainInput> All => _all;
    public IReadOnlyList<CoilPlaces> Coils { get; }

    /// <summary>1 at the middle; the ends of its interval are the ends of the cored inductance's interval.</summary>
    public int Cores { get; }
    public int Capacitance { get; }

    private CoilPlaces Add(CoilModel coil, LayEstimate lay, string of)
    {
        string key = $"{coil.Wire.Gauge}|{coil.Wire.Insulation}|{coil.Wire.OverallDiameterM}|{coil.Wire.BareDiameterM}";
        if (!_wires.TryGetValue(key, out (int Bare, int Overall, int OhmPerM) wire))
        {
            bool measured = coil.Wire.MeasuredOhmPerM is not null;
            wire = (
                Append(new($"bare diameter of {coil.Wire.Gauge}", "m", coil.Wire.BareDiameterM, Scatter.Normal, "wire table: limits of the standard, or as measured")),
                Append(new($"overall diameter of {coil.Wire.Gauge}", "m", coil.Wire.OverallDiameterM, Scatter.Normal, "wire table: limits of the standard, or as measured")),
                measured ? Append(new($"resistance per metre of {coil.Wire.Gauge}", "Ω/m", coil.Wire.MeasuredOhmPerM!.Value, Scatter.Normal, "measured on the spool")) : -1);
            _wires[key] = wire;
        }

        int packing = Append(new("packing factor" + of, "1", lay.PackingFactor, Scatter.Normal, "lay simulation, scatter over seeds and guides"));
        int turns = Append(new("turns" + of, "1", Estimate.Within(coil.Winding.Turns, CounterInterval, Basis.Assumed), Scatter.Normal, "counter ±0.2 %, common practice, no source"));
        int stretch = Append(new("stretch" + of, "1",
            new Estimate(coil.Winding.Stretch, coil.Winding.Stretch - StretchInterval, coil.Winding.Stretch + StretchInterval, Basis.Assumed), Scatter.Normal,
            "±0.5 % by winding tension, our assumption"));
        return new CoilPlaces(wire.Bare, wire.Overall, wire.OhmPerM, packing, turns, stretch);
    }

    private int Append(UncertainInput input)
    {
        _all.Add(input);
        return _all.Count - 1;
    }
}

/// <summary>Places of one coil's inputs in the list of all.</summary>
internal readonly record struct CoilPlaces(int Bare, int Overall, int OhmPerM, int Packing, int Turns, int Stretch);
