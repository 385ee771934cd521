namespace Coilwright.Physics.BoundaryElements;

/// <summary>The kernel of a set of parts before fluxes are set right: what two parts do to each other depends on those two alone.</summary>
/// <param name="Bodies">The parts.</param>
/// <param name="Places">Where their elements stand among the unknowns.</param>
/// <param name="Raw">The kernel, row-major.</param>
internal sealed record KernelBlocks(IReadOnlyList<MagneticBody> Bodies, SystemPlaces Places, double[] Raw)
{
    /// <summary>Places nearer to each other than this are one, m.</summary>
    private const double TouchM = 1e-12;

    /// <summary>
    /// Copies all blocks where another set has its unknowns in the same places; false, and nothing done, where it has not.
    /// </summary>
    public bool CopyTo(double[] kernel, KernelBlocks other)
    {
        bool alike =
            Bodies.Count == other.Bodies.Count
            && Places.Group.AsSpan().SequenceEqual(other.Places.Group)
            && Places.Unknown.Zip(other.Places.Unknown, (mine, theirs) => mine.AsSpan().SequenceEqual(theirs)).All(same => same);
        if (alike)
        {
            Raw.CopyTo(kernel, 0);
        }

        return alike;
    }

    /// <summary>True if a block of another set is the same here.</summary>
    /// <param name="other">The other set.</param>
    /// <param name="target">The part that is acted on.</param>
    /// <param name="group">The part that acts, with its mirror images.</param>
    public bool Holds(KernelBlocks other, int target, int group) =>
        Enumerable
            .Range(0, Bodies.Count)
            .Where(source => Places.Group[source] == group)
            .All(source =>
                other.Bodies[target].HasShapeOf(Bodies[target])
                && other.Bodies[source].HasShapeOf(Bodies[source])
                && IsStill(Apart(Bodies, target, source), Apart(other.Bodies, target, source))
            );

    /// <summary>Empties one block.</summary>
    public void Clear(double[] kernel, int target, int group)
    {
        int first = Places.Unknown[group].Where(u => u >= 0).Min(),
            length = Places.Unknown[group].Max() + 1 - first;
        foreach (int row in Places.Unknown[target].Where(u => u >= 0).Distinct())
        {
            kernel.AsSpan(row * Places.Count + first, length).Clear();
        }
    }

    /// <summary>True if another set's parts are these, of the same stuff and in the same places.</summary>
    public bool AreParts(IReadOnlyList<MagneticBody> others) =>
        Bodies.Count == others.Count
        && Bodies
            .Zip(others)
            .All(pair =>
                pair.First.HasShapeOf(pair.Second)
                && pair.First.Material == pair.Second.Material
                && pair.First.PolarisationT == pair.Second.PolarisationT
                && IsStill(pair.First.Place, pair.Second.Place)
            );

    private static Vector3M Apart(IReadOnlyList<MagneticBody> bodies, int target, int source)
    {
        (Vector3M to, Vector3M from) = (bodies[target].Place, bodies[source].Place);
        return new Vector3M(to.XM - from.XM, to.YM - from.YM, to.ZM - from.ZM);
    }

    private static bool IsStill(Vector3M one, Vector3M other) =>
        Math.Abs(one.XM - other.XM) + Math.Abs(one.YM - other.YM) + Math.Abs(one.ZM - other.ZM) < TouchM;
}
