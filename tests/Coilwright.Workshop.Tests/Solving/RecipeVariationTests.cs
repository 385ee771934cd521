using Coilwright.Analysis.Comparisons;
using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Solving.Variations;

namespace Coilwright.Workshop.Tests.Solving;

/// <summary>Ready questions: what is physics, what is parts and labels, and the numbers against hand work.</summary>
public sealed class RecipeVariationTests
{
    private static Recipe Demo(string file) => RecipeReader.Read(File.ReadAllText(RepositoryPath.Of("demo", "recipes", file))).Value!;

    private static ReadOutcome<Variation> Ask(Recipe recipe, VariationKind kind, string typed = "") =>
        RecipeVariation.Of(
            recipe,
            VariationQuestion.All.Single(question => question.Kind == kind),
            typed,
            null,
            TestContext.Current.CancellationToken
        );

    private static double Ratio(IReadOnlyList<ComparisonLine> lines, string name) =>
        lines.Single(line => line.Name == name).Ratio!.Value.Value;

    private static Prediction Predict(string json) =>
        Forecaster.Predict(RecipeModelBuilder.ToModel(RecipeReader.Read(json).Value!), null, cancel: TestContext.Current.CancellationToken);

    // Twice 2.8 mm of straight are 5.6 mm of every turn: the ohms of equal turns grow in that ratio, and equal ohms take as many turns
    // fewer, a little less for the shorter outer turns left out.
    [Fact]
    public void A_longer_core_adds_twice_its_length_to_every_turn()
    {
        VariationPhysics physics = Ask(Demo("harbour-bridge.json"), VariationKind.LongerCore, "2.8 mm").Value!.Physics!;
        (double now, double then) = Assert.Single(physics.MeanTurnM);
        Assert.Equal(5.6e-3, then - now, 1e-6);
        Assert.Equal(then / now, Ratio(physics.EqualTurns, "dcResistance"), 1e-6);
        (double turns, double even) = Assert.Single(physics.Turns);
        Assert.InRange(even / turns, now / then, now / then + 0.005);
        Assert.Equal(1, Ratio(physics.EqualOhms, "dcResistance"), 1e-4); // whole turns
        Assert.Equal(
            even / turns * (even / turns) * Ratio(physics.EqualTurns, "inductance"),
            Ratio(physics.EqualOhms, "inductance"),
            0.004
        );
        Assert.Equal(even, RecipeReader.Read(physics.EqualOhmsJson!).Value!.Coils[0].Winding.Turns);
    }

    [Fact]
    public void Another_spacing_leaves_winding_and_ohms_and_moves_the_poles()
    {
        Recipe harbour = Demo("harbour-bridge.json");
        Variation answer = Ask(harbour, VariationKind.Spacing, "9.84 mm").Value!;
        Recipe variant = RecipeReader.Read(answer.RecipeJson).Value!;
        Assert.Equal(2.5 * 9.84e-3, variant.Coils[0].Poles[0].PositionsM[5], 1e-9);
        Assert.Equal(9.84e-3, variant.Strings!.Spacing.Si, 1e-9);
        Assert.Equal(1, Ratio(answer.Physics!.EqualTurns, "dcResistance"), 1e-12);
        Assert.Null(answer.Physics.EqualOhmsJson);
        Assert.NotEqual(1, Ratio(answer.Physics.EqualTurns, "inductance"), 1e-5);
    }

    [Theory]
    [InlineData("harbour-bridge.json", VariationKind.SevenStrings, 7, 1 * 10.4e-3)]
    [InlineData("harbour-bridge.json", VariationKind.Bass, 4, 3 * 19e-3 - 5 * 10.4e-3)]
    [InlineData("sandbar-wide.json", VariationKind.SevenStrings, 7, 10.2e-3)]
    public void Other_strings_make_the_core_as_much_longer_as_their_row(string file, VariationKind kind, int count, double longerM)
    {
        Recipe recipe = Demo(file),
            variant = RecipeReader.Read(Ask(recipe, kind).Value!.RecipeJson).Value!;
        Assert.Equal(count, variant.Strings!.Count);
        Assert.All(variant.Coils, coil => Assert.Equal(count, coil.Poles[0].PositionsM.Count));
        Assert.Equal(longerM, variant.Coils[0].Bobbin.CoreLength.Si - recipe.Coils[0].Bobbin.CoreLength.Si, 2e-6);
        Assert.Equal(recipe.Magnets.Count, variant.Magnets.Count);
        Assert.All(variant.Magnets.Zip(recipe.Magnets), pair => Assert.Equal(longerM, pair.First.Size.X.Si - pair.Second.Size.X.Si, 2e-6));
    }

    // By symmetry: every number of the pickup stays, and the strings answer from the other side.
    [Fact]
    public void A_left_handed_pickup_is_its_mirror_image_string_by_string()
    {
        string staggered = Demo("harbour-bridge.json")
            .Json.Replace(
                "\"top\": \"9 mm\"",
                "\"tops\": [\"9 mm\", \"9.5 mm\", \"10 mm\", \"9.6 mm\", \"9.2 mm\", \"9 mm\"]",
                StringComparison.Ordinal
            );
        Variation answer = Ask(RecipeReader.Read(staggered).Value!, VariationKind.LeftHanded).Value!;
        Prediction right = Predict(staggered),
            left = Predict(answer.RecipeJson);
        Assert.Null(answer.Physics);
        Assert.Equal(right.Pickup.Inductance.Value, left.Pickup.Inductance.Value, 1e-9 * right.Pickup.Inductance.Value);
        for (int s = 0; s < 6; s++)
        {
            double there = right.Pickup.Strings[s].Sensitivity.Value;
            // the stagger's sums run in another order, the gauges are written to 0.01 µm
            Assert.Equal(there, left.Pickup.Strings[5 - s].Sensitivity.Value, 2e-4 * there);
        }

        Variation even = Ask(Demo("harbour-bridge.json"), VariationKind.LeftHanded).Value!;
        Assert.Contains(even.Parts, part => part.Contains("its own mirror image", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cover_damps_the_peak_and_labels_change_nothing_physical()
    {
        Recipe harbour = Demo("harbour-bridge.json");
        Variation cover = Ask(harbour, VariationKind.Cover, "brass").Value!;
        Variation silver = Ask(harbour, VariationKind.Cover, "Nickel silver").Value!;
        Assert.Contains("a cover of nickel silver,", string.Join('\n', silver.Parts), StringComparison.Ordinal);
        Assert.Equal("nickel-silver", RecipeReader.Read(silver.RecipeJson).Value!.Metalwork[^1].Material.Name);
        ComparisonLine height = cover.Physics!.EqualTurns.Single(line => line.Name == "unloadedPeakGain");
        Assert.True(height.Difference!.Value.High < 0, "the cover takes height off the peak for certain");
        foreach (VariationKind label in (VariationKind[])[VariationKind.Leads, VariationKind.Colour])
        {
            Variation answer = Ask(harbour, label, "slate").Value!;
            Assert.Null(answer.Physics);
            Assert.Contains(RecipeReader.Read(answer.RecipeJson).Value!.Tags, tag => tag.EndsWith(": slate", StringComparison.Ordinal));
            Assert.Equal(Predict(harbour.Json).Pickup.Inductance.Value, Predict(answer.RecipeJson).Pickup.Inductance.Value);
        }
    }

    [Fact]
    public void What_cannot_be_is_told_with_its_field_and_range()
    {
        Recipe harbour = Demo("harbour-bridge.json");
        Assert.Equal("4 mm to 30 mm", Assert.Single(Ask(harbour, VariationKind.Spacing, "90 mm").Problems).Allowed);
        Assert.Contains(
            "nickel-silver",
            Assert.Single(Ask(harbour, VariationKind.Cover, "alnico-5").Problems).Allowed,
            StringComparison.Ordinal
        );
        Assert.NotEmpty(Ask(harbour, VariationKind.Spacing, "14 mm").Problems); // the outer poles would stand beyond the core
        Recipe bare = RecipeReader
            .Read(
                harbour.Json.Replace(
                    "\"strings\": { \"count\": 6, \"spacing\": \"10.4 mm\", \"clearance\": \"2.5 mm\", \"scaleLength\": \"648 mm\", "
                        + "\"fromBridge\": \"45 mm\" },",
                    "",
                    StringComparison.Ordinal
                )
            )
            .Value!;
        Assert.Equal("strings", Assert.Single(Ask(bare, VariationKind.SevenStrings).Problems).Field);
    }
}
