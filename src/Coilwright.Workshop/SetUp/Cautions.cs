namespace Coilwright.Workshop.SetUp;

/// <summary>What to warn of where a step is printed. Common practice of workshops; it replaces no data sheet.</summary>
public static class Cautions
{
    /// <summary>Stands in the step that starts the spindle.</summary>
    public const string Spindle =
        "Rotating spindle: tie hair back, close sleeves, no gloves, no rags, no rings. Seat and clamp the former before you start; it can fly off. Keep hands away until it stands still.";

    /// <summary>Stands in the step that threads the wire.</summary>
    public const string FineWire =
        "Fine wire at speed cuts, and a loose end whips: wear eye protection. Never catch a running wire with the fingers. Collect cut ends at once.";

    /// <summary>Stands in the step that bares and tins the ends.</summary>
    public const string EndFume =
        "Burning enamel off gives fume (polyurethane: diisocyanates), and so does rosin: extract it at the joint, do not breathe it. Wash hands after solder that holds lead.";

    /// <summary>Ends every sheet.</summary>
    public const string ClosingLine =
        "Follow the product's safety data sheet, local codes, and those licensed to advise on them.";
}
