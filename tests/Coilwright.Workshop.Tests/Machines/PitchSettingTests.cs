using Coilwright.Workshop.Machines;

namespace Coilwright.Workshop.Tests.Machines;

public sealed class PitchSettingTests
{
    private static readonly int[] s_wheels = [19, 20, 24, 30, 40, 48, 60, 80, 100];

    [Theory] // worked by hand: 1 mm · 19/100; 2 mm / 800 = 2.5 µm a step, 76 steps
    [InlineData("""{ "screwLead": "1 mm", "wheels": [19, 20, 24, 30, 40, 48, 60, 80, 100] }""", "gear", 0.19e-3, "gear pair 19 : 100")]
    [InlineData("""{ "screwLead": "2 mm", "stepsPerTurn": 800 }""", "stepper", 0.19e-3, "76 steps per turn")]
    [InlineData("""{ "travelPerStep": "0.0025 mm" }""", "stepper", 0.19e-3, "76 steps per turn")]
    [InlineData(
        """{ "cams": [ { "name": "A", "stroke": "11 mm", "turnsPerStroke": 58 }, { "name": "B", "stroke": "11 """
            + """mm", "turnsPerStroke": 40 } ] }""",
        "cam",
        11e-3 / 58,
        "cam A"
    )]
    public void The_nearest_pitch_says_how_it_is_set(string traverse, string kind, double pitchM, string how)
    {
        Machine machine = Read($$"""{ "format": "coilwright.machine/1", "name": "W", "kind": "{{kind}}", "traverse": {{traverse}} }""");

        PitchSetting setting = PitchSetting.For(machine, 0.19e-3, 11e-3, 1200);

        Assert.Equal(pitchM, setting.PitchM, 1e-12);
        Assert.StartsWith(how, setting.How, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hand_is_told_turns_and_seconds_of_a_pass()
    {
        PitchSetting setting = PitchSetting.For(new Machine { Name = "W", Kind = MachineKind.HandGuided }, 0.19e-3, 11e-3, 1200);
        Assert.Equal("by hand: one pass over the window in 58 turns, 2.9 s", setting.How); // 11 ÷ 0.19 = 57.9; ÷ 20 turns a second
    }

    [Fact]
    public void A_pitch_far_from_the_recipe_is_told()
    {
        PitchSetting setting = PitchSetting.For(Gear(1), 0.08e-3, 11e-3, 1200);
        Assert.Equal(0.19e-3, setting.PitchM, 1e-12);
        Assert.Contains("138 % coarser", setting.Note, StringComparison.Ordinal);
    }

    /// <summary>No pair of the set, tried one by one, comes nearer than the one chosen; nor any two pairs.</summary>
    [Fact]
    public void No_other_wheels_come_nearer() =>
        Gen.Double[0.02e-3, 2e-3]
            .ForAll(
                wantedM =>
                {
                    double one = Math.Abs(PitchSetting.For(Gear(1), wantedM, 11e-3, null).PitchM - wantedM),
                        two = Math.Abs(PitchSetting.For(Gear(2), wantedM, 11e-3, null).PitchM - wantedM);
                    double bestOne = double.MaxValue,
                        bestTwo = double.MaxValue;
                    foreach ((int a, int b) in from a in Enumerable.Range(0, 9) from b in Enumerable.Range(0, 9) where a != b select (a, b))
                    {
                        bestOne = Math.Min(bestOne, Math.Abs((double)s_wheels[a] / s_wheels[b] * 1e-3 - wantedM));
                        foreach (
                            (int c, int d) in from c in Enumerable.Range(0, 9)
                            from d in Enumerable.Range(0, 9)
                            where new[] { a, b, c, d }.Distinct().Count() == 4
                            select (c, d)
                        )
                        {
                            bestTwo = Math.Min(
                                bestTwo,
                                Math.Abs((double)s_wheels[a] * s_wheels[c] / (s_wheels[b] * s_wheels[d]) * 1e-3 - wantedM)
                            );
                        }
                    }

                    Assert.Equal(bestOne, one, 1e-12);
                    Assert.Equal(Math.Min(bestOne, bestTwo), two, 1e-12);
                },
                count: 20
            );

    [Fact]
    public void A_cam_that_does_not_suit_the_window_and_an_eccentric_are_told()
    {
        Machine machine = Read(
            """{ "format": "coilwright.machine/1", "name": "W", "kind": "cam", "traverse": { "cams": [ { "name": "E", "stroke": "13 """
                + """mm", "turnsPerStroke": 60, "motion": "harmonic" } ] } }"""
        );
        string note = PitchSetting.For(machine, 0.2e-3, 11e-3, null).Note;
        Assert.Contains("onto the flanges", note, StringComparison.Ordinal);
        Assert.Contains("piles up at the flanges", note, StringComparison.Ordinal);
    }

    private static Machine Gear(int stages) =>
        new()
        {
            Name = "W",
            Kind = MachineKind.Gear,
            Traverse = new Traverse.Gears(1e-3, s_wheels, stages),
        };

    private static Machine Read(string json) => Assert.IsType<Machine>(MachineReader.Read(json).Value);
}
