namespace Coilwright.Physics.BoundaryElements;

/// <summary>How finely an engine cuts a problem, and the error that this leaves.</summary>
internal sealed record FieldSettings
{
    public required Resolution Air { get; init; }

    /// <summary>Current sheets through the build, and points on each quarter arc of a sheet.</summary>
    public required int Layers { get; init; }
    public required int ArcNodes { get; init; }

    /// <summary>Points around a rod where a winding's or another rod's field is averaged.</summary>
    public required int Around { get; init; }

    /// <summary>
    /// Waves of the charge around a rod, without and with bars in the problem, and whether two rings share their densities.
    /// </summary>
    public required int Harmonics { get; init; }
    public required int HarmonicsWithBars { get; init; }
    public required bool PairedWaves { get; init; }

    /// <summary>Rings on a rod's side and on each end.</summary>
    public required int SideRings { get; init; }
    public required int CapRings { get; init; }

    /// <summary>
    /// Widest ring on a rod's side over its radius, and on an end over its length: long and flat rods get more rings, up to <see
    /// cref="MostRings"/> times as many.
    /// </summary>
    public required double WidestRing { get; init; }

    /// <summary>Times as many rings as usual that a long or flat rod gets; less with many poles.</summary>
    public int MostRings { get; init; } = 8;

    /// <summary>Panels of all bars and blades together: beyond that they are cut more coarsely.</summary>
    public required int MostPanels { get; init; }

    /// <summary>
    /// Added where rods or bars are cut more coarsely than their shape asks for, for want of time and memory. Our assumption.
    /// </summary>
    public const double CoarseError = 0.1;

    /// <summary>Panels along a bar's longest side; the shorter ones get their share, at least two.</summary>
    public required int LongPanels { get; init; }

    /// <summary>
    /// Power of its share of the length by which a shorter side gets panels, and points along a panel where the field of rods is averaged.
    /// </summary>
    public required double PanelPower { get; init; }
    public required int PanelPoints { get; init; }

    /// <summary>The same for a blade, which is its coil's whole core.</summary>
    public required int BladePanels { get; init; }

    /// <summary>Directions of the frequency sweep per winding and material.</summary>
    public required int Directions { get; init; }

    /// <summary>Panels in the quarter of all covers and plates together, and currents kept in them per winding and mirror class.</summary>
    public required int SheetPanels { get; init; }
    public required int SheetCurrents { get; init; }

    /// <summary>A current that differs from those kept by less than this share is left out.</summary>
    public required double SheetTolerance { get; init; }

    /// <summary>Directions of the frequency sweep per sheet current and material.</summary>
    public required int SheetDirections { get; init; }

    /// <summary>Error of the cores' share of an inductance, as a fraction (95 %): from six rods against finite elements.</summary>
    public required double CoreError { get; init; }

    /// <summary>
    /// Added for a bar close to rods: against 3-D finite elements beside a µ 4.5 bar, of the cores' share of the mutual inductance.
    /// </summary>
    public required double BarError { get; init; }

    /// <summary>
    /// Added when a pole stands on a bar: a shaft on a plate against the same as one stepped body, µ 100 (−0.2 % at µ 4.5 with the accurate
    /// cutting).
    /// </summary>
    public required double ContactError { get; init; }

    /// <summary>
    /// Error of the magnets' field 1 to 6 mm over a pole, as a fraction (95 %), without and with bars: against finite elements,
    /// tests/Reference/field.
    /// </summary>
    public required double FieldError { get; init; }
    public required double FieldErrorWithBars { get; init; }

    /// <summary>What a problem is solved with that this cut cannot resolve; null for the finest.</summary>
    public FieldSettings? Finer { get; init; }

    /// <summary>For what is kept and printed: within 0.1 % of the total with rods, 0.2 % with a bar beside them.</summary>
    public static FieldSettings Accurate { get; } =
        new()
        {
            Air = Resolution.Accurate,
            Layers = 4,
            ArcNodes = 12,
            Around = 12,
            Harmonics = 2,
            HarmonicsWithBars = 2,
            PairedWaves = true,
            SideRings = 32,
            CapRings = 10,
            WidestRing = 0.8,
            LongPanels = 24,
            PanelPower = 0.5,
            PanelPoints = 3,
            BladePanels = 28,
            MostPanels = 4000,
            Directions = 14,
            SheetPanels = 450,
            SheetCurrents = 5,
            SheetTolerance = 5e-3,
            SheetDirections = 2,
            CoreError = 0.004,
            BarError = 0.006,
            ContactError = 0.05,
            FieldError = 0.003,
            FieldErrorWithBars = 0.012,
        };

    /// <summary>
    /// While a value is being moved: one and six rods against finite elements −0.2 % (µ 4.5) to −0.85 % (µ 100, 500) of the total, −1.4 %
    /// of the cores' share.
    /// </summary>
    public static FieldSettings Fast { get; } =
        new()
        {
            Air = Resolution.Fast,
            Layers = 2,
            ArcNodes = 4,
            Around = 8,
            Harmonics = 0,
            HarmonicsWithBars = 1,
            PairedWaves = true,
            SideRings = 12,
            CapRings = 4,
            WidestRing = 1.6,
            LongPanels = 16,
            PanelPower = 0.75,
            PanelPoints = 2,
            BladePanels = 14,
            MostPanels = 1600,
            Directions = 7,
            SheetPanels = 110,
            SheetCurrents = 3,
            SheetTolerance = 0.02,
            SheetDirections = 2,
            CoreError = 0.025,
            BarError = 0.03,
            ContactError = 0.08,
            FieldError = 0.008,
            FieldErrorWithBars = 0.02,
            Finer = Accurate,
        };

    /// <summary>
    /// These settings for a number of rods: many of them are cut with fewer rings, and very many without waves around them.
    /// </summary>
    public FieldSettings For(int rods) =>
        rods switch
        {
            <= 14 => this,
            <= 24 => this with { MostRings = 2, Finer = null },
            _ => Fast with { MostRings = 1, Finer = null, Harmonics = 0, HarmonicsWithBars = 0, CoreError = Fast.CoreError + CoarseError },
        };
}
