using System.Numerics;
using Coilwright.Physics;
using Coilwright.Physics.BoundaryElements;
using Coilwright.Physics.Sizes;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Sizes;

namespace Coilwright.Workshop.Tests.Recipes;

/// <summary>What a length does to the field, by solving what it moves, against the quick engine solving all of it anew.</summary>
public sealed class NeighbourFieldTests
{
    private const double StepM = 5e-5;

    public static TheoryData<string> Recipes => [.. DemoFiles.Recipes().Select(row => row.Data)];

    private static PickupModel Model(string name) =>
        RecipeModelBuilder.ToModel(
            RecipeReader.Read(DemoFiles.Recipe(name)).Value! with
            {
                SizeRules = new SizeRules { CommonM = 0.2e-3 },
            }
        );

    private static FieldProblem Problem(PickupModel model) =>
        new(
            [.. model.Coils.Select(coil => new FieldCoil(coil.Bobbin, 2e-3, 1, 1, coil.Position, coil.Poles))],
            model.Bars,
            model.Sheets,
            [20, 1000, 7000, 20000]
        );

    private static Vector3M Over(PickupModel model) =>
        new(3e-3, 1e-3, 2.5e-3 + model.Coils.Max(coil => coil.Poles.Max(pole => coil.Position.ZM + pole.TopsM.Max())));

    private static double[] Told(double[,] air, double[,] still, IReadOnlyList<Complex[,]> spectrum, FieldMap map, Vector3M at)
    {
        Vector3M field = map.MagnetFluxDensityT(at);
        Vector3M[] coils = new Vector3M[1 + map.Windings];
        map.ComputeFields(at, coils);
        return
        [
            .. air.Cast<double>(),
            .. still.Cast<double>(),
            .. spectrum.SelectMany(one => one.Cast<Complex>().SelectMany(h => new[] { h.Real, h.Imaginary })),
            field.XM,
            field.YM,
            field.ZM,
            .. coils[1..].SelectMany(coil => new[] { coil.XM, coil.YM, coil.ZM }),
        ];
    }

    private static double[] Whole(PickupModel model, Vector3M at)
    {
        FieldSolution whole = new FastFieldEngine().Solve(Problem(model), TestContext.Current.CancellationToken);
        return Told(whole.AirInductanceH, whole.StaticInductanceH, whole.SpectrumH, whole.Map, at);
    }

    private static double[] Told(NeighbourField field, Vector3M at) =>
        Told(field.AirInductanceH, field.StaticInductanceH, field.SpectrumH, field.Map, at);

    // The same cut solved another way: 2 % of the change, and 1 % of the largest change that any length of the pickup makes.
    [Theory]
    [MemberData(nameof(Recipes))]
    public void What_a_length_changes_is_what_the_quick_engine_changes_by_solving_all_of_it(string name)
    {
        PickupModel model = Model(name);
        Vector3M at = Over(model);
        NeighbourField middle = NeighbourField.Solve(Problem(model), TestContext.Current.CancellationToken);
        (double[] wholeHere, double[] here) = (Whole(model, at), Told(middle, at));
        (string Name, double[] Whole, double[] Near)[] changes =
        [
            .. model.Sizes.Select(size =>
            {
                PickupModel moved = SizeMoves.Move(model, size, Math.Min(StepM, 0.02 * Math.Abs(size.Estimate.Value)));
                double[] near = Told(middle.Neighbour(Problem(moved), TestContext.Current.CancellationToken), at);
                return (
                    size.Name,
                    Whole(moved, at).Zip(wholeHere, (there, from) => there - from).ToArray(),
                    near.Zip(here, (there, from) => there - from).ToArray()
                );
            }),
        ];
        Assert.True(changes.Length > 5);
        for (int k = 0; k < here.Length; k++)
        {
            double most = changes.Max(change => Math.Abs(change.Whole[k])),
                rounding = 1e-9 * Math.Abs(here[k]) + 1e-18;
            Assert.All(changes, change =>
                Assert.True(
                    Math.Abs(change.Near[k] - change.Whole[k]) <= 0.02 * Math.Abs(change.Whole[k]) + 0.01 * most + rounding,
                    FormattableString.Invariant($"{change.Name}, {k}: {change.Near[k]:g4} for {change.Whole[k]:g4}, most {most:g4}")
                )
            );
        }
    }

    // A neighbour's own solution from nothing, in the same cut: rounding of the factors.
    [Theory]
    [MemberData(nameof(Recipes))]
    public void What_is_kept_of_the_middle_is_what_would_be_solved(string name)
    {
        PickupModel model = Model(name);
        Vector3M at = Over(model);
        NeighbourField middle = NeighbourField.Solve(Problem(model), TestContext.Current.CancellationToken);
        foreach (PartSize size in model.Sizes.Where(one => one.Kind is not (SizeKind.MostBuild or SizeKind.Wall or SizeKind.Flange)))
        {
            FieldProblem moved = Problem(SizeMoves.Move(model, size, 1e-7)); // too little for another number of rings
            double[] near = Told(middle.Neighbour(moved, TestContext.Current.CancellationToken), at),
                alone = Told(NeighbourField.Solve(moved, TestContext.Current.CancellationToken), at);
            double largest = alone.Take(middle.AirInductanceH.Length).Max();
            for (int k = 0; k < near.Length; k++)
            {
                Assert.True(
                    Math.Abs(near[k] - alone[k]) <= 1e-7 * Math.Max(Math.Abs(alone[k]), 1e-3 * largest),
                    FormattableString.Invariant($"{size.Name}, {k}: {near[k]:g9} for {alone[k]:g9}")
                );
            }
        }
    }
}
