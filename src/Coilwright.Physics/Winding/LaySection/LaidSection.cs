namespace Coilwright.Physics.Winding;

/// <summary>Two turns that lie beside each other.</summary>
/// <param name="Earlier">Number of the turn wound first, from 0.</param>
/// <param name="Later">Number of the turn wound second.</param>
/// <param name="GapM">Free distance between their coats, m; zero when they touch.</param>
public readonly record struct NeighbourPair(int Earlier, int Later, double GapM);

/// <summary>The section of a winding, turn by turn in the order of winding.</summary>
public sealed record LaidSection
{
    /// <summary>What was laid.</summary>
    public required LaySpec Spec { get; init; }

    /// <summary>Centre of each turn along the window, from the lower flange, m.</summary>
    public required IReadOnlyList<double> XM { get; init; }

    /// <summary>Centre of each turn above the former, m.</summary>
    public required IReadOnlyList<double> YM { get; init; }

    /// <summary>Pairs of turns closer than <see cref="LaySimulation.NeighbourReach"/> diameters, centre to centre.</summary>
    public required IReadOnlyList<NeighbourPair> Neighbours { get; init; }

    /// <summary>
    /// Radial thickness as a caliper reads it, m: the top of the highest turn in each millimetre of the window, averaged over the window.
    /// </summary>
    /// <remarks>
    /// A ragged top has no one height. This one is what a shop can measure and what must fit, so packing factors learnt from readings
    /// compare with it.
    /// </remarks>
    public required double BuildM { get; init; }

    /// <summary>
    /// The same over slices about one diameter wide, m: the height that matters to area and field, about one diameter below <see
    /// cref="BuildM"/> when scattered.
    /// </summary>
    public required double MeanTopM { get; init; }

    /// <summary>Radial thickness at the highest turn, m: what must clear the flange's edge or a cover.</summary>
    public required double HighestM { get; init; }

    /// <summary>Part of height × build that is wire with its coat: N·π/4·d² / (height·build).</summary>
    public double PackingFactor => Spec.Turns * Math.PI / 4 * Spec.OverallM * Spec.OverallM / (Spec.WindingHeightM * BuildM);
}
