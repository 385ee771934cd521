using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Polarity;

public sealed class RecipePhaseTests
{
    [Theory]
    [InlineData("tideway-bass", "in phase, hum cancels")]
    [InlineData("breakwater-twin", "in phase, hum cancels")] // poles by the bar magnet beneath
    public void Humbucking_recipes_of_the_demo_are_in_phase(string recipe, string expected)
    {
        RecipePhase phase = RecipePhase.Of(Read(recipe, text => text));
        Assert.Equal(expected, phase.Together!.Words);
        Assert.False(phase.IsRed);
        Assert.Empty(phase.Warnings);
    }

    [Fact]
    public void One_coil_wound_the_other_way_is_red_before_winding_starts()
    {
        RecipePhase phase = RecipePhase.Of(
            Read("tideway-bass", text => text.Replace("\"clockwise\"", "\"counter-clockwise\"", StringComparison.Ordinal))
        );
        Assert.True(phase.IsRed);
        Assert.Contains("out of phase", Assert.Single(phase.Warnings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_magnet_turned_over_turns_every_pole_and_no_phase()
    {
        RecipePhase turned = RecipePhase.Of(
            Read("breakwater-twin", text => text.Replace("\"magnetised\": \"y\"", "\"magnetised\": \"-y\"", StringComparison.Ordinal))
        );
        RecipePhase before = RecipePhase.Of(Read("breakwater-twin", text => text));
        Assert.Equal(before.Coils.Select(coil => -coil.Magnet), turned.Coils.Select(coil => coil.Magnet));
        Assert.Equal(before.Together, turned.Together);
    }

    [Fact]
    public void A_single_coil_has_a_first_swing_and_no_phase()
    {
        RecipePhase phase = RecipePhase.Of(Read("harbour-bridge", text => text));
        Assert.Null(phase.Together);
        Assert.Equal(-1, Assert.Single(phase.Coils).FirstSwing); // counter-clockwise, north up
    }

    private static Recipe Read(string name, Func<string, string> change) =>
        RecipeReader.Read(change(File.ReadAllText(RepositoryPath.Of("demo", "recipes", name + ".json")))).Value!;
}
