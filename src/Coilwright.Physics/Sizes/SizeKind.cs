namespace Coilwright.Physics.Sizes;

/// <summary>Which length of a part a size is.</summary>
public enum SizeKind
{
    /// <summary>Overall length of a former.</summary>
    CoreLength,

    /// <summary>Overall width of a former; a round end follows it.</summary>
    CoreWidth,

    /// <summary>Radius of a former's corners.</summary>
    EndRadius,

    /// <summary>Space between the flanges.</summary>
    WindingHeight,

    /// <summary>Radial room for the winding.</summary>
    MostBuild,

    /// <summary>Thickness under the first turn.</summary>
    Wall,

    /// <summary>Thickness of each flange.</summary>
    Flange,

    /// <summary>Diameter of a rod or screw, thickness of a blade.</summary>
    PoleDiameter,

    /// <summary>Extent of a blade along x.</summary>
    PoleWidth,

    /// <summary>Extent of a pole along z; its top stays.</summary>
    PoleLength,

    /// <summary>Diameter of a screw's head.</summary>
    HeadDiameter,

    /// <summary>Height of a screw's head.</summary>
    HeadHeight,

    /// <summary>Distance of neighbouring poles; the whole row stretches evenly.</summary>
    PoleSpacing,

    /// <summary>Height of the tops of a row, all together.</summary>
    PoleTop,

    /// <summary>Extent of a bar along x.</summary>
    BarLength,

    /// <summary>Extent of a bar along y.</summary>
    BarWidth,

    /// <summary>Extent of a bar along z.</summary>
    BarHeight,

    /// <summary>Place of a bar along x.</summary>
    BarX,

    /// <summary>Place of a bar along y.</summary>
    BarY,

    /// <summary>Place of a bar along z.</summary>
    BarZ,

    /// <summary>Thickness of a cover or plate.</summary>
    SheetThickness,

    /// <summary>Outside length of a cover or plate.</summary>
    SheetLength,

    /// <summary>Outside width of a cover or plate.</summary>
    SheetWidth,

    /// <summary>Upper face of a cover or plate.</summary>
    SheetTop,

    /// <summary>Lower edge of a cover, or lower face of a plate.</summary>
    SheetBottom,

    /// <summary>Corner radius of a cover or plate.</summary>
    SheetCorner,

    /// <summary>From the highest pole top to the strings.</summary>
    Clearance,
}
