namespace Coilwright.Workshop.Steps;

/// <summary>What to warn of where a step after winding is printed. Common practice of workshops; it replaces no data sheet.</summary>
public static class StepCautions
{
    /// <summary>Stands in the step that handles or charges magnets.</summary>
    public const string Magnets =
        "Strong magnets pinch fingers and splinter; keep them from pacemakers and cards. A capacitor-discharge charger stores lethal energy: covers shut, discharged before opening, never alone.";

    /// <summary>Stands in the step that uses molten wax.</summary>
    public const string Wax =
        "Molten wax burns: thermostat and an independent cut-out, never on a flame, never unattended. Never water on burning wax: lid on, power off. Gloves, eye protection.";

    /// <summary>Stands in a step with lacquer, thinner or solvent ink.</summary>
    public const string Vapour =
        "Lacquer and thinner vapour burns and harms: extract it, no flame, no sparks, closed pots, rags in a lidded metal bin.";

    /// <summary>Stands in a step with hardener.</summary>
    public const string Hardener =
        "Epoxy and ink hardeners make skin and lungs sensitive for good: gloves, extraction, no skin contact; wash with soap and water, not solvent.";

    /// <summary>Stands where old parts are worked on.</summary>
    public const string OldParts =
        "Old celluloid burns fiercely and old lacquers may hold lead or solvents: no flame, no dry sanding.";
}
