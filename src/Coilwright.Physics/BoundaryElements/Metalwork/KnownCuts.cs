namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// The last few cuts of sheets, with the matrices of their mirror classes. What is kept depends on its key alone, so that keeping it
/// changes no result.
/// </summary>
internal static class KnownCuts
{
    private const int Most = 12;
    private static readonly LinkedList<Known> s_known = new();
    private static readonly Lock s_gate = new();

    public static SheetCut Get(
        int panels,
        IReadOnlyList<(SheetModel Sheet, int Index)> sheets,
        IReadOnlyList<(double X, double Y, double Radius)>[] holes,
        Func<SheetCut> make
    )
    {
        lock (s_gate)
        {
            if (
                s_known.FirstOrDefault(known =>
                    known.Panels == panels
                    && known.Sheets.SequenceEqual(sheets)
                    && known.Holes.Zip(holes).All(pair => pair.First.SequenceEqual(pair.Second))
                ) is
                { } found
            )
            {
                s_known.Remove(found);
                s_known.AddFirst(found);
                return found.Cut;
            }
        }

        Known made = new(panels, sheets, holes, make());
        lock (s_gate)
        {
            s_known.AddFirst(made);
            while (s_known.Count > Most)
            {
                s_known.RemoveLast();
            }
        }

        return made.Cut;
    }

    private sealed record Known(
        int Panels,
        IReadOnlyList<(SheetModel Sheet, int Index)> Sheets,
        IReadOnlyList<(double X, double Y, double Radius)>[] Holes,
        SheetCut Cut
    );
}
