using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>
/// Checks that wire and bobbin make a winding at all. A value that was not understood is NaN, so that no comparison with it can fail.
/// </summary>
internal static class WindingChecks
{
    /// <summary>Wires side by side that a window must hold: below that nothing is known of the lay.</summary>
    private const double LeastAbreast = 3;

    /// <summary>Fewest parts of the winding's section that are wire: the loosest lay that a forecast reckons with.</summary>
    private const double LoosestPacking = 0.4;

    /// <summary>More than hard-drawn copper bears, Pa; annealed wire breaks at about half. From memory.</summary>
    private const double MostStressPa = 500e6;

    public static void Check(RecipeCoil coil, string path, ProblemList problems)
    {
        if (coil.Wire is not RecipeWire wire)
        {
            return;
        }

        (double bareM, double overallM) = DiametersM(wire);
        if (overallM <= bareM)
        {
            problems.Add(
                path + (wire.BareDiameter is null ? ".wire.overallDiameter" : ".wire.bareDiameter"),
                "the copper is as thick as this gauge is over its enamel; give both diameters",
                $"{Told(bareM)} bare, {Told(overallM)} over the enamel",
                "a bare diameter below the one over the enamel"
            );
        }

        if (coil.Winding?.Tension is Entered tension && tension.Si > MostStressPa * CopperWire.AreaM2(bareM))
        {
            problems.Add(
                path + ".winding.tension",
                "copper wire this thin breaks long before that",
                QuantityParser.Echo(tension, QuantityKind.Force),
                "at most " + QuantityParser.FormatIn(MostStressPa * CopperWire.AreaM2(bareM), QuantityKind.Force, "gf", 3)
            );
        }

        if (coil.Bobbin is RecipeBobbin bobbin)
        {
            CheckWindow(coil, bobbin, overallM, path, problems);
        }
    }

    private static void CheckWindow(RecipeCoil coil, RecipeBobbin bobbin, double overallM, string path, ProblemList problems)
    {
        double heightM = bobbin.WindingHeight.Si;
        if (heightM < LeastAbreast * overallM)
        {
            problems.Add(
                path + ".bobbin.windingHeight",
                "too low for this wire: not even three turns lie side by side",
                Echo(bobbin.WindingHeight),
                "at least " + Told(LeastAbreast * overallM)
            );
        }

        if (coil.Winding?.Build is Entered build && build.Si < overallM)
        {
            problems.Add(path + ".winding.build", "thinner than one layer of this wire", Echo(build), "at least " + Told(overallM));
        }
        else if (coil.Winding is { Build: null } winding && BuildM(winding.Turns, overallM, heightM) > Allowed.MaxBuild.Max)
        {
            double most = Math.Floor(winding.Turns * Allowed.MaxBuild.Max / BuildM(winding.Turns, overallM, heightM));
            problems.Add(
                path + ".winding.turns",
                $"so many turns of this wire would stand {Told(BuildM(winding.Turns, overallM, heightM))} thick on a window this low",
                FormattableString.Invariant($"{winding.Turns:0.##}"),
                FormattableString.Invariant($"1 to {most:0}; a winding is at most {Told(Allowed.MaxBuild.Max)} thick")
            );
        }
    }

    private static double BuildM(double turns, double overallM, double heightM) =>
        turns * CopperWire.AreaM2(overallM) / (LoosestPacking * heightM);

    private static (double BareM, double OverallM) DiametersM(RecipeWire wire)
    {
        WireSize? size = wire.Gauge.Length > 0 ? Catalogue.Gauge(wire.Gauge, out _) : null;
        double bareM = wire.BareDiameter?.Si ?? size?.Bare.NominalM ?? double.NaN;
        return (bareM, wire.OverallDiameter?.Si ?? FilmedM(size, wire.Build, bareM));
    }

    private static double FilmedM(WireSize? size, string build, double bareM)
    {
        if (size is null)
        {
            return bareM * RecipeModelBuilder.UsualOverall;
        }

        return size.Builds.TryGetValue(build, out DiameterLimits film) ? film.NominalM : double.NaN;
    }

    private static string Echo(Entered length) => QuantityParser.Echo(length, QuantityKind.Length);

    private static string Told(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm", 4);
}
