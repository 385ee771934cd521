using Coilwright.Physics.Electrostatics;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>
/// Change of the capacitances outside the windings with a length, F/m: to metal, between windings, and of windings with themselves.
/// </summary>
internal readonly record struct StrayRate(double Metal, double Between, double Own)
{
    /// <summary>From one pickup to the same with a length changed.</summary>
    /// <param name="here">The pickup.</param>
    /// <param name="there">With the length changed.</param>
    /// <param name="byM">The change, m.</param>
    public static StrayRate Over(StrayEstimate here, StrayEstimate there, double byM) =>
        new((there.Metal.Value - here.Metal.Value) / byM, (there.Between.Value - here.Between.Value) / byM, (there.OwnF - here.OwnF) / byM);
}
