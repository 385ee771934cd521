namespace Coilwright.Physics.BoundaryElements.Metalwork;

/// <summary>A four-cornered piece of a thin sheet with even current; corners 00, 01 round the sheet, 10, 11 one row further out.</summary>
internal sealed class SheetPanel
{
    /// <param name="corners">The four corners in that order.</param>
    /// <param name="centre">Middle of the panel on the sheet itself, m.</param>
    /// <param name="nodes">Nodes of the corners.</param>
    /// <param name="thicknessM">Thickness of the sheet, m.</param>
    /// <param name="turned">True when the numbering runs clockwise.</param>
    public SheetPanel(Vector3M[] corners, Vector3M centre, int[] nodes, double thicknessM, bool turned)
    {
        (P00, P01, P10, P11, Nodes, ThicknessM, Centre) = (corners[0], corners[1], corners[2], corners[3], nodes, thicknessM, centre);
        Round = Space.Times(Space.Plus(Space.Minus(P01, P00), Space.Minus(P11, P10)), 0.5);
        Out = Space.Times(Space.Plus(Space.Minus(P10, P00), Space.Minus(P11, P01)), 0.5);
        Vector3M normal = Space.Cross(Out, Round);
        // An outline whose long side lies along y is numbered the other way round.
        AreaVector = turned ? Space.Times(normal, -1) : normal;
        Turn = turned ? -1 : 1;
        AreaM2 = Space.Length(AreaVector);
        Normal = Space.Times(AreaVector, 1 / AreaM2);
        (double round, double along) = (Space.Length(Round), AreaM2 / Space.Length(Round));
        (HalfRoundM, HalfOutM, SizeM) = (round / 2, along / 2, Math.Max(round, along));
        RoundUnit = Space.Times(Round, 1 / round);
        OutUnit = Space.Cross(Normal, RoundUnit);
        (Vector3M halfRound, Vector3M halfOut) = (Space.Times(RoundUnit, HalfRoundM), Space.Times(OutUnit, HalfOutM));
        (LongHalf, ShortHalf) = round > along ? (halfRound, halfOut) : (halfOut, halfRound);
        Moments = new PanelMoments(halfRound, halfOut, Space.Times(Normal, thicknessM / 2));
    }

    public Vector3M P00 { get; }
    public Vector3M P01 { get; }
    public Vector3M P10 { get; }
    public Vector3M P11 { get; }

    /// <summary>Nodes of the four corners in the order 00, 01, 10, 11.</summary>
    public int[] Nodes { get; }
    public double ThicknessM { get; }
    public Vector3M Centre { get; }

    /// <summary>Middle vectors across the panel, round the sheet and outward.</summary>
    public Vector3M Round { get; }
    public Vector3M Out { get; }

    /// <summary>Area times the normal that points up or out of the sheet.</summary>
    public Vector3M AreaVector { get; }
    public Vector3M Normal { get; }
    public Vector3M RoundUnit { get; }
    public Vector3M OutUnit { get; }

    /// <summary>+1, or −1 where the numbering runs clockwise.</summary>
    public int Turn { get; }
    public double AreaM2 { get; }

    /// <summary>Half sides of the rectangle that stands for the panel, and the larger side.</summary>
    public double HalfRoundM { get; }
    public double HalfOutM { get; }
    public double SizeM { get; }

    /// <summary>From the middle to the middle of a shorter, and of a longer side.</summary>
    public Vector3M LongHalf { get; }
    public Vector3M ShortHalf { get; }

    public PanelMoments Moments { get; }

    /// <summary>Share of the panel that is a hole.</summary>
    public double OpenShare { get; set; }
}
