using Coilwright.Analysis.Pairing;

namespace Coilwright.Workshop.Polarity;

/// <summary>Phase and hum of coils that sound together, from signs: string sign = winding × magnet, hum sign = winding alone.</summary>
/// <remarks>
/// Derived from Faraday's law; no table of makers' habits is used. For coils in parallel the same signs hold, and the hum level only where
/// the coils are alike.
/// </remarks>
public static class PhaseRule
{
    /// <summary>Hum left below this level is called cancelled; 10 % of the sum. Our assumption.</summary>
    public const double CancelledDb = -20;

    /// <summary>The answer for any two coils.</summary>
    public static PhaseAnswer Between(CoilSigns one, CoilSigns other) => Of([one, other]);

    /// <summary>The answer for the coils that a position of a switch leaves sounding.</summary>
    /// <param name="sounding">At least one coil, each as it is connected in that position.</param>
    public static PhaseAnswer Of(IReadOnlyList<CoilSigns> sounding)
    {
        if (sounding.Count == 0)
        {
            throw new ArgumentException("A position in which no coil sounds has no phase.", nameof(sounding));
        }

        double plus = sounding.Where(coil => coil.Winding > 0).Sum(coil => coil.TurnsArea),
            minus = sounding.Where(coil => coil.Winding < 0).Sum(coil => coil.TurnsArea);
        double level = plus > 0 && minus > 0 ? HumResidue.LevelDb(plus, minus) : 0;
        bool both = plus > 0 && minus > 0;
        HumAnswer against = level <= CancelledDb ? HumAnswer.Cancels : HumAnswer.CancelsInPart;
        HumAnswer hum = both ? against : HumAnswer.Adds;
        int[] signs = [.. sounding.Select(coil => coil.Strings).Distinct()];
        return new PhaseAnswer(signs.Contains(0) ? null : signs.Length == 1, hum, level);
    }
}
