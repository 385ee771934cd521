using Coilwright.Analysis.Originals;
using Coilwright.Physics;
using Coilwright.Physics.Materials;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Originals;

/// <summary>Identifies an original: asks which wires and cores explain its readings.</summary>
public static class Identification
{
    /// <summary>The answer.</summary>
    /// <param name="original">What is known and read.</param>
    /// <param name="metric">Look among metric sizes instead of AWG.</param>
    /// <param name="cancel">Stops it.</param>
    public static OriginalAnswer Of(Original original, bool metric = false, CancellationToken cancel = default)
    {
        PickupModel model = RecipeModelBuilder.ToModel(original.Recipe);
        RecipeCoil coil = original.Recipe.Coils[0];
        List<string> notes = [];
        List<OriginalReading> readings = [.. original.Readings];
        AddKnown(original, coil, readings);
        if (original.Recipe.Coils.Count > 1)
        {
            notes.Add("all coils are taken to be wound alike: turns are those of each");
        }

        if (readings.Any(reading => reading.Quantity == "inductance") && coil.Poles.Count == 0 && original.Recipe.Magnets.Count == 0)
        {
            notes.Add("no poles are described: the inductance is taken to be that of a coil without cores");
        }

        if (readings.All(reading => reading.Quantity is not ("dcResistance" or "inductance" or "turns")))
        {
            notes.Add("without a resistance or an inductance the turns stay open");
        }

        OriginalAnswer answer = OriginalFinder.Find(
            new OriginalQuestion { Wires = WireGuess.For(model.Coils[0].Wire, coil.Wire.Gauge, coil.Wire.Build, original.WireKnown, metric), Cores = CoresOf(original, model), Readings = readings },
            cancel);
        return answer with { Warnings = [.. answer.Warnings, .. notes] };
    }

    /// <summary>What a recipe's fields say as measured counts as read.</summary>
    private static void AddKnown(Original original, RecipeCoil coil, List<OriginalReading> readings)
    {
        if (original.TurnsKnown)
        {
            readings.Add(new OriginalReading("turns", coil.Winding.Turns, 0.005 * coil.Winding.Turns));
        }

        if (coil.Wire.BareDiameter is { } bare)
        {
            readings.Add(new OriginalReading("bareDiameter", bare.Si, 1e-6));
        }

        if (coil.Wire.OverallDiameter is { } overall)
        {
            readings.Add(new OriginalReading("overallDiameter", overall.Si, 1e-6));
        }
    }

    private static IReadOnlyList<CoreHypothesis> CoresOf(Original original, PickupModel model) => original.CoresKnown
        ? [new CoreHypothesis("", model, 1)]
        : [.. CoreGuess.All.Select(guess => new CoreHypothesis(guess.Material, WithCores(model, original.Recipe, MaterialCatalogue.Find(guess.Material)!), guess.Prior))];

    /// <summary>Poles whose material is not known take this one.</summary>
    private static PickupModel WithCores(PickupModel model, Recipe recipe, Material material) => model with
    {
        Coils = [.. model.Coils.Select(coil => coil with
        {
            Poles = [.. coil.Poles.Select(pole => pole.Material != CoreGuess.Placeholder ? pole : pole with
            {
                Material = material.Key,
                RelativePermeability = material.RelativePermeability.Estimate,
                ConductivitySPerM = material.ConductivitySPerM.Estimate,
            })],
        })],
    };
}
