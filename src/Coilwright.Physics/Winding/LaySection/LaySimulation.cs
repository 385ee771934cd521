namespace Coilwright.Physics.Winding;

/// <summary>Lays a winding turn by turn in the section plane.</summary>
/// <remarks>
/// Each turn comes down where the traverse stands (triangular motion between the flanges, one pitch per turn, plus seeded normal wander
/// that turns back at a flange), touches the first turn below, and rolls over the turns it meets until two of them, one of
/// them and a flange, or the former hold it. Turns that lie do not move again and nothing is pressed flat: tension and springing back are
/// outside
/// this model. Own model; no outside authority. Same spec and seed give the same section on every platform (only + − × ÷ √ are used).
/// </remarks>
public static class LaySimulation
{
    /// <summary>Centre distance, in diameters, up to which two turns count as neighbours.</summary>
    /// <remarks>
    /// A neighbour faces 60° of a turn, so a turn has room for six. Up to 1.3 diameters a scattered lay has 5.0 to 5.4 (four of them
    /// touching);
    /// at 1.5 it would have more than six and count some copper twice. A choice, not a measurement: it moves the capacitance by about 5 %.
    /// </remarks>
    public const double NeighbourReach = 1.3;

    /// <summary>Width over which the build is read at its highest turn, m: a caliper's jaw. Assumption.</summary>
    public const double JawM = 1e-3;

    /// <summary>Lays every turn of <paramref name="spec"/>.</summary>
    /// <param name="spec">What to lay; its members state their ranges.</param>
    /// <param name="seed">Any number; the same one gives the same section.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of <paramref name="spec"/> lies outside its range.</exception>
    public static LaidSection Run(LaySpec spec, ulong seed)
    {
        Require.InRange(spec.OverallM, 5e-6, 1e-3);
        Require.InRange(spec.WindingHeightM, 3 * spec.OverallM, 1);
        Require.InRange(spec.Turns, 1, 100_000);
        Require.InRange(spec.PitchM, 1e-6, 1);
        Require.InRange(spec.JitterM, 0, 1);
        double height = spec.WindingHeightM / spec.OverallM; // in diameters from here on
        SectionRandom random = new(seed);
        LayHeap heap = new(spec.Turns, height);
        List<NeighbourPair> pairs = new(3 * spec.Turns);
        for (int i = 0; i < spec.Turns; i++)
        {
            (double place, int heading) = Fold(i * (spec.PitchM / spec.OverallM), height - 1);
            if (spec.JitterM > 0)
            {
                place += random.NextNormal() * (spec.JitterM / spec.OverallM);
            }

            heap.Drop(Fold(place, height - 1).Place + 0.5, heading);
            heap.AppendNeighbours(i, NeighbourReach, spec.OverallM, pairs);
        }

        return Section(spec, heap, pairs);
    }

    /// <summary>Folds travel since the start into a place between the flanges and the way the guide is heading there.</summary>
    private static (double Place, int Heading) Fold(double travel, double span)
    {
        double phase = Math.Abs(travel) % (2 * span);
        return phase <= span ? (phase, 1) : (2 * span - phase, -1);
    }

    private static LaidSection Section(LaySpec spec, LayHeap heap, List<NeighbourPair> pairs)
    {
        double d = spec.OverallM;
        return new()
        {
            Spec = spec,
            XM = Array.ConvertAll(heap.X, x => x * d),
            YM = Array.ConvertAll(heap.Y, y => y * d),
            Neighbours = pairs,
            BuildM = heap.MeanTop(Math.Max(1, (int)Math.Round(spec.WindingHeightM / JawM))) * d,
            MeanTopM = heap.MeanTop((int)(spec.WindingHeightM / d)) * d,
            HighestM = (heap.Y.Max() + 0.5) * d,
        };
    }
}
