using Coilwright.Physics;
using Coilwright.Physics.Electrostatics;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>
/// Change of the capacitances outside the windings with a length, F/m: to metal, between windings, and of windings with themselves.
/// </summary>
internal readonly record struct StrayRate(double Metal, double Between, double Own)
{
    /// <summary>From one pickup to the same with a length changed, covers and plates in their places.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="moved">With the length changed.</param>
    /// <param name="buildsM">Builds here and there, m.</param>
    /// <param name="drops">Share of each coil in the voltage.</param>
    /// <param name="byM">The change, m.</param>
    public static StrayRate Over(PickupModel model, PickupModel moved, (double[] Here, double[] There) buildsM, double[] drops, double byM)
    {
        StrayEstimate here = StrayCapacitance.Compute(model, buildsM.Here, drops),
            there = StrayCapacitance.Compute(moved, buildsM.There, drops);
        return new StrayRate(
            (there.Metal.Value - here.Metal.Value) / byM,
            (there.Between.Value - here.Between.Value) / byM,
            (there.OwnF - here.OwnF) / byM
        );
    }
}
