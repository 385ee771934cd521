using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Curves;

/// <summary>A person wants a pickup's parts from a measured curve.</summary>
public sealed class FitCurve
{
    private const int FewestGains = 8;

    /// <summary>Frequencies at which the inductance is told unless others are asked for.</summary>
    public static IReadOnlyList<double> UsualHz { get; } = [120, 1000];

    /// <summary>Fits a curve; a problem of an option carries its name, one of the curve none.</summary>
    /// <param name="path">What the curve is called.</param>
    /// <param name="table">The curve.</param>
    /// <param name="load">What hung on the pickup when its gain was taken, or null.</param>
    /// <param name="resistanceOhm">The winding's resistance for a curve of gain, or null.</param>
    /// <param name="eddy">Eddy branches; null lets the curve decide.</param>
    /// <param name="atHz">Frequencies at which the inductance is told.</param>
    public ReadOutcome<FitAnswer> Fit(
        string path,
        CurveTable table,
        LoadCircuit? load,
        double? resistanceOhm,
        int? eddy,
        IReadOnlyList<double> atHz
    )
    {
        bool impedance = table.Curve.ImpedanceOhm is not null;
        if (Wrong(table, impedance, load, resistanceOhm) is { } problem)
        {
            return new ReadOutcome<FitAnswer>(null, [problem]);
        }

        CurveFit fit = impedance
            ? ImpedanceFit.Fit(table.Curve, eddy)
            : GainFit.Fit(table.Curve, load ?? LoadCircuit.None, resistanceOhm, eddy);
        IReadOnlyList<string> faults = PossibleWinding.Faults(fit, !impedance);
        FitAnswer answer =
            faults.Count > 0
                ? new FitAnswer(path, table, fit, null, []) { Faults = faults }
                : new FitAnswer(path, table, fit, ImpedanceResonance.Find(fit.Pickup), [.. atHz.Select(hz => Inductance(fit, hz))]);
        return new ReadOutcome<FitAnswer>(answer, []);
    }

    private static Problem? Wrong(CurveTable table, bool impedance, LoadCircuit? load, double? resistanceOhm)
    {
        if (impedance && (load is not null || resistanceOhm is not null))
        {
            return new Problem(
                load is not null ? "--load" : "--resistance",
                "belongs to a curve of gain; this table holds an impedance, which is taken as the pickup's own"
            );
        }

        return !impedance && table.Curve.Count < FewestGains
            ? new Problem(
                "",
                "a gain curve needs more points to be fitted",
                FormattableString.Invariant($"{table.Curve.Count} of them"),
                $"at least {FewestGains}"
            )
            : null;
    }

    /// <summary>Series inductance of the winding without its capacitance, and what a meter would show there.</summary>
    internal static InductanceAt Inductance(CurveFit fit, double hz) =>
        new(
            hz,
            fit.Derived(pickup => pickup.ImpedanceOhm(hz).Imaginary / (2 * Math.PI * hz)),
            PickupImpedance.ApparentInductanceH(fit.Pickup, hz)
        );
}
