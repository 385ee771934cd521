using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Causes;

/// <summary>One coil of a demo recipe, with targets where its coils lie or without any.</summary>
internal sealed class SimulatedRecipe
{
    private static readonly (string File, int Coil)[] s_all = [("harbour-bridge", 0), ("breakwater-twin", 0), ("keel-blade", 0)];

    private SimulatedRecipe(string file, int coil, bool hasTargets)
    {
        Recipe read = RecipeReader.Read(File.ReadAllText(RepositoryPath.Of("demo", "recipes", file + ".json"))).Value!;
        Name = file + (hasTargets ? ", targets" : ", no targets");
        HasTargets = hasTargets;
        Recipe bare = read with
        {
            Targets = new Dictionary<string, Target>(),
            Coils = [.. read.Coils.Select(one => one with { Targets = new Dictionary<string, Target>() })],
        };
        Physics = new CoilPhysics(bare, coil);
        VerdictLimits forecast = VerdictLimits.ForCoil(bare, coil);
        Dictionary<string, Target> targets = new()
        {
            [QuantityKey.DcResistance] = Wanted(forecast.Resistance.Nominal, "Ω", 0.05, null),
            [QuantityKey.Inductance] = Wanted(forecast.Expected(CoilPhysics.LowHz)!.InductanceH, "H", 0.05, CoilPhysics.LowHz),
        };
        Limits = hasTargets
            ? VerdictLimits.ForCoil(
                bare with
                {
                    Coils = [.. bare.Coils.Select((one, n) => n == coil ? one with { Targets = targets } : one)],
                },
                coil
            )
            : forecast;
    }

    public static IReadOnlyList<SimulatedRecipe> All { get; } =
    [.. s_all.SelectMany(one => new[] { new SimulatedRecipe(one.File, one.Coil, true), new SimulatedRecipe(one.File, one.Coil, false) })];

    public string Name { get; }

    public bool HasTargets { get; }

    public CoilPhysics Physics { get; }

    public VerdictLimits Limits { get; }

    private static Target Wanted(double si, string unit, double tolerance, double? hz) =>
        new(new Entered(si, "", unit), tolerance, "", hz, 20);
}
