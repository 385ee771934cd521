namespace Coilwright.Workshop.SetUp;

/// <summary>
/// What to warn of where a step is printed or shown. All of it is common practice of workshops, no source; it replaces no data sheet.
/// </summary>
/// <remarks>Pages, papers and commands ask by what is being done; the texts stand here alone.</remarks>
public static class Cautions
{
    /// <summary>A turning spindle.</summary>
    public const string Spindle =
        "Rotating spindle: eye protection, hair tied back, sleeves closed, no gloves, no rags, no rings. "
        + "Seat and clamp the former; it can fly off. Power off before threading or clearing. Hands away until it stands still.";

    /// <summary>Wire that runs, is threaded or cut.</summary>
    public const string FineWire =
        "Fine wire at speed cuts, and a loose end whips: wear eye protection. Never catch a running wire with the fingers. "
        + "Collect cut ends at once.";

    /// <summary>Ends that are bared, tinned, soldered or unsoldered.</summary>
    public const string EndFume =
        "Burning enamel off gives fume (polyurethane: diisocyanates), and so does rosin: extract it at the joint, do not breathe it. "
        + "Wash hands after solder that holds lead.";

    /// <summary>A bath of wax, paraffin or beeswax.</summary>
    public const string HotWax =
        "Molten wax burns: earthed tank, thermostat and an independent cut-out, never on a flame, never unattended. "
        + "Never water on burning wax: lid on, power off. Gloves, eye protection.";

    /// <summary>Lacquer, thinner, solvent ink, resin.</summary>
    public const string Vapour =
        "Lacquer and thinner vapour burns and harms: extract it, no flame or sparks, closed pots, rags in a lidded metal bin.";

    /// <summary>Hardener of epoxy or two-part ink.</summary>
    public const string Hardener =
        "Epoxy and ink hardeners can cause permanent allergy: gloves, extraction, no skin contact; soap and water, not solvent.";

    /// <summary>Magnets in the hand.</summary>
    public const string Magnets =
        "Strong magnets pinch and splinter: eye protection; keep them from implants (pacemakers, defibrillators, pumps, shunts) and cards.";

    /// <summary>Magnets, on a label as large as a thumb.</summary>
    public const string MagnetsOnLabel = "Magnets: keep from implants (pacemakers, defibrillators, pumps, shunts).";

    /// <summary>Magnets, on a label too small for more.</summary>
    public const string MagnetsOnSmallLabel = "Magnets: keep from implants.";

    /// <summary>A machine that charges magnets.</summary>
    public const string Charger =
        "A capacitor-discharge charger stores lethal energy: covers shut, no interlock bypassed, plug out and discharged before opening. "
        + "Eye protection: parts fly. Never alone.";

    /// <summary>Motor, tank, iron, charger, lamp on the mains.</summary>
    public const string Mains =
        "Mains (winder, wax tank, iron, charger, lamp): earth them, an old winder too; plug out before a cover opens.";

    /// <summary>An amplifier near a measurement.</summary>
    public const string Loudspeaker =
        "Never connect an amplifier's loudspeaker output to a pickup: its wire burns out. "
        + "Keep a loudspeaker low while you test: sudden noise harms hearing.";

    /// <summary>A sound that the program made.</summary>
    public const string Listening =
        "Turn headphones and loudspeaker right down before you play this, then up slowly: "
        + "it may be louder than what played before, and loud sound harms hearing for good.";

    /// <summary>Old parts.</summary>
    public const string OldParts = "Old celluloid burns fiercely and old lacquers may hold lead or solvents: no flame, no dry sanding.";

    /// <summary>What goes to the owner.</summary>
    public const string Implants = "Holds strong magnets: keep it from implants (pacemakers, defibrillators, pumps, shunts) and cards.";

    /// <summary>Ends every sheet and every page with cautions.</summary>
    public const string ClosingLine = "Follow the product's safety data sheet, local codes, and those licensed to advise on them.";

    private static readonly (string Part, IReadOnlyList<string> Cautions)[] s_byWord =
    [
        ("wax", [HotWax]),
        ("paraffin", [HotWax]),
        ("lacquer", [Vapour]),
        ("thinner", [Vapour]),
        ("varnish", [Vapour]),
        ("epoxy", [Hardener, Vapour]),
        ("resin", [Hardener, Vapour]),
        ("ink", [Vapour, Hardener]),
        ("mark", [Vapour, Hardener]),
        ("magnet", For(Job.Charging)),
        ("charge", For(Job.Charging)),
        ("knock", For(Job.Charging)),
        ("solder", [EndFume, Mains]),
        ("lead", [EndFume, Mains]),
        ("wind", For(Job.Winding)),
        ("test", For(Job.Testing)),
    ];

    /// <summary>The cautions of what is being done, the nearest first.</summary>
    public static IReadOnlyList<string> For(Job job) =>
        job switch
        {
            Job.RunningWinder => [Spindle, Mains],
            Job.Winding => [Spindle, FineWire, EndFume, Mains],
            Job.MeasuringWire => [FineWire, EndFume],
            Job.ReadingCoil => [EndFume, Mains],
            Job.Assembly or Job.Wiring => [EndFume, Magnets, Mains],
            Job.Charging => [Magnets, Charger, Mains],
            Job.Marking => [Vapour, Hardener],
            Job.Testing => [Magnets, Loudspeaker],
            Job.Handling => [Magnets],
            Job.Listening => [Listening],
            Job.Owning => [Implants],
            Job.Mending => [EndFume, OldParts, Magnets, Mains],
            _ => throw new ArgumentOutOfRangeException(nameof(job), job, "unknown"),
        };

    /// <summary>The cautions of a potting bath; none where nothing is potted.</summary>
    /// <param name="kind">What the bath holds, a word of the recipe's potting; null for none.</param>
    public static IReadOnlyList<string> ForPotting(string? kind) =>
        kind switch
        {
            null or "" or "none" or "air" => [],
            "wax" or "paraffin" or "beeswax" => [HotWax],
            "lacquer" => [Vapour],
            "epoxy" => [Hardener, Vapour],
            _ => [HotWax, Vapour, Hardener], // a bath that is not known may be any
        };

    /// <summary>
    /// The cautions of a bath that pieces hang in: something is in it, so where its kind is not known, those of every kind.
    /// </summary>
    /// <param name="kind">What the bath holds; null where it is not known.</param>
    public static IReadOnlyList<string> ForBath(string? kind) => ForPotting(ForPotting(kind).Count > 0 ? kind : "not known");

    /// <summary>The cautions of all that a recipe asks of the one who makes it: winding, potting, magnets.</summary>
    /// <param name="pottingKind">What the recipe is potted in; null where it does not say.</param>
    /// <param name="hasMagnets">True where the pickup has magnets.</param>
    public static IReadOnlyList<string> ForMaking(string? pottingKind, bool hasMagnets) =>
        [.. For(Job.Winding), .. ForPotting(pottingKind), .. hasMagnets ? For(Job.Handling) : []];

    /// <summary>The cautions of a step of a recipe.</summary>
    /// <param name="step">Its name: a usual one, or the shop's own.</param>
    /// <param name="pottingKind">What the recipe is potted in; null where it does not say.</param>
    /// <param name="charges">True where magnets are charged or knocked down in it.</param>
    public static IReadOnlyList<string> ForStep(string step, string? pottingKind, bool charges)
    {
        IReadOnlyList<string> own = step switch
        {
            "assembly" => For(Job.ReadingCoil), // magnets come in their own step
            "potting" => ForBath(pottingKind),
            "magnets" => For(Job.Charging),
            "marking" => For(Job.Marking),
            "final test" => For(Job.Testing),
            "packing" => For(Job.Handling),
            _ => ByWords(step, charges),
        };
        return charges ? [.. own.Union(For(Job.Charging), StringComparer.Ordinal)] : own;
    }

    /// <summary>A step that the shop named: by the words in its name; where none is known, what glue and lacquer ask for.</summary>
    private static string[] ByWords(string step, bool charges)
    {
        IEnumerable<string> named = s_byWord
            .Where(word => step.Contains(word.Part, StringComparison.OrdinalIgnoreCase))
            .SelectMany(word => word.Cautions);
        string[] found = [.. named.Distinct(StringComparer.Ordinal)];
        return found.Length > 0 || charges ? found : [Vapour, Hardener];
    }
}
