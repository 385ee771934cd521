using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Application.Comparisons;

/// <summary>One design of a comparison as its circuit sees it.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Branch">Its series branch.</param>
/// <param name="CapacitanceF">Capacitance across it, F.</param>
/// <param name="LossOhm">Loss resistance across it; null for none.</param>
/// <param name="Pickup">Its forecast; null for a measured one.</param>
public sealed record ComparedDesign(string Name, ISeriesBranch Branch, double CapacitanceF, double? LossOhm, PickupForecast? Pickup)
{
    /// <summary>The design solved, for intervals; null for a measured one.</summary>
    public SolvedPickup? Solved { get; init; }

    /// <summary>What it does on a load, against the pinned one; null for a measured design.</summary>
    public IReadOnlyList<ComparisonLine>? Against(ComparedDesign pinned, LoadCircuit load) =>
        Solved is { } solved
            ? PickupComparison.Between((pinned.Solved ?? solved).On(load, inCircuit: true), solved.On(load, inCircuit: true))
            : null;

    public Response Compute(LoadCircuit load, double[] frequenciesHz) =>
        PickupResponse.Compute(Branch, CapacitanceF, LossOhm, load, frequenciesHz);

    public ResonancePeak? Peak(LoadCircuit load) => PickupResponse.FindPeak(Branch, CapacitanceF, LossOhm, load);

    public double? Fall(LoadCircuit load) => PickupResponse.FindMinus3Db(Branch, CapacitanceF, LossOhm, load);

    public double NoiseV(LoadCircuit load) => CircuitResponse.ThermalNoiseV(GuitarCircuit.FromCoil(Branch, CapacitanceF, LossOhm, load));
}
