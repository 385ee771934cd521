using System.Globalization;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>
/// Could any winding have what a fit found? A curve that carries something else than a pickup behind its load still has a best fit, and
/// that is no result.
/// </summary>
/// <remarks>
/// The ranges are wide on purpose: from a few turns of thick wire to several coils of the thinnest in series. Our choice, no source.
/// </remarks>
public static class PossibleWinding
{
    private const double LeastOhm = 0.05,
        MostOhm = 1e6,
        LeastHenry = 1e-6,
        MostHenry = 100,
        LeastFarad = 1e-13,
        MostFarad = 1e-6,
        LeastResonanceHz = 1,
        MostResonanceHz = 1e7;

    /// <summary>Scatter around the fit above which the curve is not that of the circuit: 2 dB of a gain, 25 % of an impedance.</summary>
    private const double MostScatterDb = 2,
        MostScatterShare = 0.25;

    /// <summary>Every reason why the fit is none of a winding, in workshop words; empty when it may be one.</summary>
    /// <param name="fit">What was fitted.</param>
    /// <param name="isGain">True for a curve of gain (scatter in dB), false for an impedance (scatter as a part of one).</param>
    public static IReadOnlyList<string> Faults(CurveFit fit, bool isGain)
    {
        List<string> faults = [.. PartFaults(fit)];
        double scatter = fit.Fit.ResidualDeviation;
        if (!(scatter <= (isGain ? MostScatterDb : MostScatterShare)))
        {
            faults.Add(
                isGain
                    ? FormattableString.Invariant($"the best fit still scatters by {scatter:0.0} dB; up to {MostScatterDb} dB would do")
                    : FormattableString.Invariant(
                        $"the best fit still scatters by {100 * scatter:0} %; up to {100 * MostScatterShare} % would do"
                    )
            );
        }

        return faults;
    }

    /// <summary>Every part that no winding can have, in workshop words, and that the fit does not settle.</summary>
    public static IReadOnlyList<string> PartFaults(CurveFit fit)
    {
        LumpedPickup pickup = fit.Pickup;
        List<string> faults = [];
        double henry = pickup.InductanceH + pickup.Eddy.Sum(branch => branch.InductanceH);
        if (!fit.Fit.Converged)
        {
            faults.Add("the fit does not settle");
        }

        if (pickup.ResistanceOhm is not (>= LeastOhm and <= MostOhm))
        {
            faults.Add(
                FormattableString.Invariant(
                    $"it would need a resistance of {Rough(pickup.ResistanceOhm)} Ω; windings have {LeastOhm} Ω to {MostOhm / 1e6} MΩ"
                )
            );
        }

        if (henry is not (>= LeastHenry and <= MostHenry))
        {
            faults.Add(
                FormattableString.Invariant(
                    $"it would need an inductance of {Rough(henry)} H; windings have {LeastHenry * 1e6} µH to {MostHenry} H"
                )
            );
        }

        if (pickup.CapacitanceF is not (>= LeastFarad and <= MostFarad))
        {
            faults.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"it would need a capacitance of {Rough(pickup.CapacitanceF * 1e12)} pF; windings have {LeastFarad * 1e12} "
                        + $"pF to {MostFarad * 1e6} µF"
                )
            );
        }

        double resonanceHz = 1 / (2 * Math.PI * Math.Sqrt(pickup.InductanceH * pickup.CapacitanceF));
        if (faults.Count == 0 && resonanceHz is not (>= LeastResonanceHz and <= MostResonanceHz))
        {
            faults.Add(
                FormattableString.Invariant(
                    $"it would resonate at {Rough(resonanceHz)} Hz; pickups do at {LeastResonanceHz} Hz to {MostResonanceHz / 1e6} MHz"
                )
            );
        }

        return faults;
    }

    /// <summary>Two digits are enough for what cannot be.</summary>
    private static string Rough(double value)
    {
        if (value >= 1e6)
        {
            return "over 1,000,000";
        }

        if (value < 0.001)
        {
            return "under 0.001";
        }

        double place = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return (Math.Round(value / place) * place).ToString("#,0.####", CultureInfo.InvariantCulture);
    }
}
