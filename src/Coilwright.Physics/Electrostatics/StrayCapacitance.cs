namespace Coilwright.Physics.Electrostatics;

/// <summary>What a pickup has across its wires beside its windings' own capacitance and its leads.</summary>
/// <param name="Metal">To poles, magnets, plates and covers, grounded or floating, F.</param>
/// <param name="Between">From winding to winding, F.</param>
/// <param name="OwnF">Of the windings with themselves, past their free faces, F.</param>
/// <param name="UnsaidF">By how much the metal's part may differ with the other hot end and with everything grounded, where the recipe says
/// nothing, F.</param>
public sealed record StrayEstimate(Estimate Metal, Estimate Between, double OwnF, double UnsaidF);

/// <summary>Capacitance outside the windings, in closed form; docs/theory.md tells how.</summary>
public static class StrayCapacitance
{
    /// <summary>Which end of a coil lies towards the hot wire when the recipe does not say: the finish. Assumption.</summary>
    public const CoilEnd UsualHot = CoilEnd.Finish;

    /// <summary>Estimates it.</summary>
    /// <param name="model">The pickup.</param>
    /// <param name="buildsM">Radial thickness of each winding, m.</param>
    /// <param name="drops">Each coil's share of the voltage across the pickup, in their order; the first lies at ground.</param>
    public static StrayEstimate Compute(PickupModel model, IReadOnlyList<double> buildsM, IReadOnlyList<double> drops)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(drops);
        StrayNetwork network = new(new StrayField(model, buildsM));
        bool[] counts = [.. model.Coils.Select((coil, c) => coil.Winding.MeasuredCapacitanceF is null && InCircuit(model, c))];
        CoilVoltage[] usual = Voltages(model, drops, UsualHot),
            other = Voltages(model, drops, CoilEnd.Start);
        (double MetalF, double BetweenF, double OwnF)[] cases =
        [
            .. StrayCase.All.Select((_, which) => network.Energy(which, usual, counts, unsaidGrounded: null)),
        ];
        double Departure(CoilVoltage[] voltages, bool? grounded) =>
            Math.Abs(network.Energy(0, voltages, counts, grounded).MetalF - cases[0].MetalF);
        return new StrayEstimate(
            Ends([.. cases.Select(one => one.MetalF)]),
            Ends([.. cases.Select(one => one.BetweenF)]),
            cases[0].OwnF,
            Math.Max(Departure(other, grounded: null), Math.Max(Departure(usual, grounded: true), Departure(other, grounded: true)))
        );
    }

    /// <summary>True with grounded metal or several coils: leads that are not named are then taken as screened.</summary>
    public static bool HasScreenedLead(PickupModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return model.Coils.Count > 1
            || model.Sheets.Any(sheet => sheet.Grounded ?? true)
            || model.Bars.Any(bar => bar.Grounded == true)
            || model.Coils.Any(coil => coil.Poles.Any(pole => pole.Grounded == true));
    }

    private static bool InCircuit(PickupModel model, int coil) => coil == 0 || model.Connection != Connection.Single;

    /// <summary>The coils one behind the other from ground to the hot wire, or side by side between both.</summary>
    private static CoilVoltage[] Voltages(PickupModel model, IReadOnlyList<double> drops, CoilEnd unsaid)
    {
        CoilVoltage[] voltages = new CoilVoltage[model.Coils.Count];
        double at = 0;
        for (int c = 0; c < voltages.Length; c++)
        {
            double from = model.Connection == Connection.Series ? at : 0;
            CoilVoltage one = new(from, from + (InCircuit(model, c) ? drops[c] : 0));
            voltages[c] = (model.Coils[c].Hot ?? unsaid) == CoilEnd.Finish ? one : one.Turned;
            at += drops[c];
        }

        return voltages;
    }

    /// <summary>The first value with both ends: the ends of each assumption and of the method, in quadrature of their logarithms.</summary>
    private static Estimate Ends(double[] cases)
    {
        double middle = cases[0];
        if (middle <= 0)
        {
            return Estimate.Exact(0, Basis.Forecast);
        }

        double squares = Math.Pow(Math.Log(StrayField.ModelFactor95), 2);
        for (int k = 1; k < cases.Length; k += 2)
        {
            double half = Math.Max(Math.Abs(Math.Log(cases[k] / middle)), Math.Abs(Math.Log(cases[k + 1] / middle)));
            squares += half * half;
        }

        double factor = Math.Exp(Math.Sqrt(squares));
        return new Estimate(middle, middle / factor, middle * factor, Basis.Forecast);
    }
}
