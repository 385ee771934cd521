namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>
/// Field strength of each winding at every panel and its images, A/m per ampere-turn: of the winding alone, and with the cores as they are
/// at rest.
/// </summary>
internal sealed class SheetDrive
{
    /// <param name="cut">The panels.</param>
    /// <param name="windings">Fields of the windings.</param>
    /// <param name="system">The permeable parts.</param>
    /// <param name="charges">Their charges, a set per winding.</param>
    /// <param name="mirrored">True when windings and parts are mirror images of themselves in x = 0.</param>
    public SheetDrive(SheetCut cut, CoilField[] windings, SurfaceSystem system, double[][] charges, bool mirrored)
    {
        int panels = cut.Panels.Length;
        Alone = [.. windings.Select(_ => new Vector3M[4 * panels])];
        Whole = [.. windings.Select(_ => new Vector3M[4 * panels])];
        ChargeCloud cloud = new(system, charges);
        Parallel.For(0, 4 * panels, at =>
        {
            if (mirrored && at / panels % 2 == 1)
            {
                return;
            }

            Vector3M place = SheetCut.Image(cut.Panels[at % panels].Centre, at / panels);
            Span<Vector3M> cores = stackalloc Vector3M[windings.Length];
            cloud.AddFieldAt(place, cores);
            for (int w = 0; w < windings.Length; w++)
            {
                Alone[w][at] = windings[w].ComputeField(place.XM, place.YM, place.ZM);
                Whole[w][at] = Space.Plus(Alone[w][at], cores[w]);
                if (mirrored)
                {
                    Alone[w][at + panels] = SheetCut.Image(Alone[w][at], 1);
                    Whole[w][at + panels] = SheetCut.Image(Whole[w][at], 1);
                }
            }
        });
    }

    /// <summary>By winding, at [image · panels + panel].</summary>
    public Vector3M[][] Alone { get; }
    public Vector3M[][] Whole { get; }
}
