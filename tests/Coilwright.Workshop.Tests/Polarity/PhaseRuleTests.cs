using Coilwright.Physics.Winding;
using Coilwright.Workshop.Polarity;
using static Coilwright.Physics.Winding.WindingDirection;
using static Coilwright.Workshop.Polarity.PoleTop;

namespace Coilwright.Workshop.Tests.Polarity;

public sealed class PhaseRuleTests
{
    // Written out by hand: who is out of phase has exactly one of direction and pole unlike; who cancels hum has directions unlike.
    [Theory]
    [InlineData(Clockwise, North, Clockwise, North, "in phase, hum adds")]
    [InlineData(Clockwise, North, Clockwise, South, "out of phase, hum adds")]
    [InlineData(Clockwise, North, CounterClockwise, North, "out of phase, hum cancels")]
    [InlineData(Clockwise, North, CounterClockwise, South, "in phase, hum cancels")]
    [InlineData(Clockwise, South, Clockwise, North, "out of phase, hum adds")]
    [InlineData(Clockwise, South, Clockwise, South, "in phase, hum adds")]
    [InlineData(Clockwise, South, CounterClockwise, North, "in phase, hum cancels")]
    [InlineData(Clockwise, South, CounterClockwise, South, "out of phase, hum cancels")]
    [InlineData(CounterClockwise, North, Clockwise, North, "out of phase, hum cancels")]
    [InlineData(CounterClockwise, North, Clockwise, South, "in phase, hum cancels")]
    [InlineData(CounterClockwise, North, CounterClockwise, North, "in phase, hum adds")]
    [InlineData(CounterClockwise, North, CounterClockwise, South, "out of phase, hum adds")]
    [InlineData(CounterClockwise, South, Clockwise, North, "in phase, hum cancels")]
    [InlineData(CounterClockwise, South, Clockwise, South, "out of phase, hum cancels")]
    [InlineData(CounterClockwise, South, CounterClockwise, North, "out of phase, hum adds")]
    [InlineData(CounterClockwise, South, CounterClockwise, South, "in phase, hum adds")]
    public void All_sixteen_combinations(WindingDirection a, PoleTop poleA, WindingDirection b, PoleTop poleB, string expected)
    {
        Assert.Equal(expected, PhaseRule.Between(Coil("A", a, poleA), Coil("B", b, poleB)).Words);
        // exchanging the ends of both, or looking at both from below, changes nothing between them
        Assert.Equal(expected, PhaseRule.Between(Coil("A", a, poleA).Reversed(), Coil("B", b, poleB).Reversed()).Words);
        Assert.Equal(
            expected,
            PhaseRule
                .Between(Coil("A", a, poleA) with { Side = SeenFrom.Bottom }, Coil("B", b, poleB) with { Side = SeenFrom.Bottom })
                .Words
        );
        // what is seen from the other side the other way round is the same coil
        Assert.Equal(
            expected,
            PhaseRule
                .Between(
                    Coil("A", a, poleA),
                    Coil("B", b == Clockwise ? CounterClockwise : Clockwise, poleB) with
                    {
                        Side = SeenFrom.Bottom,
                    }
                )
                .Words
        );
    }

    [Fact]
    public void Exchanging_the_ends_of_one_coil_turns_both_answers()
    {
        PhaseAnswer exchanged = PhaseRule.Between(Coil("A", Clockwise, North), Coil("B", CounterClockwise, South).Reversed());
        Assert.Equal("out of phase, hum adds", exchanged.Words);
    }

    [Fact]
    public void A_switch_position_answers_for_the_coils_it_leaves_sounding()
    {
        CoilSigns[] coils = [Coil("neck", Clockwise, North), Coil("middle", CounterClockwise, South), Coil("bridge", Clockwise, North)];
        Assert.Equal("in phase, hum cancels", new SwitchPosition("2", ["neck", "middle"], []).Answer(coils).Words);
        Assert.Equal("in phase, hum adds", new SwitchPosition("3", ["neck", "bridge"], []).Answer(coils).Words);
        Assert.Equal("in phase, hum cancels in part", new SwitchPosition("all", ["neck", "middle", "bridge"], []).Answer(coils).Words);
        // one of three is left
        Assert.Equal(20 * Math.Log10(1.0 / 3), new SwitchPosition("all", ["neck", "middle", "bridge"], []).Answer(coils).HumLevelDb, 1e-9);
        Assert.Equal("out of phase, hum cancels", new SwitchPosition("odd", ["neck", "bridge"], ["bridge"]).Answer(coils).Words);
    }

    [Fact]
    public void A_pole_that_is_not_stated_leaves_the_phase_open_but_not_the_hum()
    {
        PhaseAnswer answer = PhaseRule.Between(Coil("A", Clockwise, Unknown), Coil("B", CounterClockwise, South));
        Assert.Null(answer.InPhase);
        Assert.Equal(HumAnswer.Cancels, answer.Hum);
    }

    // A different road to the same sign: the field of iron above the coil as a growing dipole, its vector potential summed along the wire.
    [Theory]
    [InlineData(CounterClockwise, North)]
    [InlineData(CounterClockwise, South)]
    [InlineData(Clockwise, North)]
    [InlineData(Clockwise, South)]
    public void The_first_swing_agrees_with_the_induced_field_along_the_wire(WindingDirection direction, PoleTop pole)
    {
        const int Steps = 360;
        const double RadiusM = 0.005,
            HeightM = 0.006;
        double moment = pole == North ? 1 : -1; // iron above a north pole is magnetised upwards, and more so as it comes nearer
        double turn = direction == CounterClockwise ? 1 : -1,
            emf = 0;
        for (int step = 0; step < Steps; step++)
        {
            double angle = turn * 2 * Math.PI * (step + 0.5) / Steps,
                length = 2 * Math.PI * RadiusM / Steps;
            double distance = Math.Sqrt(RadiusM * RadiusM + HeightM * HeightM);
            // around the dipole's axis, counter-clockwise for an upward moment
            double potential = 1e-7 * moment * RadiusM / Math.Pow(distance, 3);
            double along = potential * (-Math.Sin(angle) * -Math.Sin(angle) + Math.Cos(angle) * Math.Cos(angle)) * turn;
            emf -= along * length; // E = −∂A/∂t, and the potential of the far end is that of the near end plus the work of E
        }

        Assert.Equal(Math.Sign(emf), Coil("A", direction, pole).FirstSwing);
    }

    private static CoilSigns Coil(string name, WindingDirection direction, PoleTop pole) =>
        new(name, direction, SeenFrom.Top, HotEnd.Finish, pole);
}
