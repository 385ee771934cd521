using Coilwright.Physics.Winding;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Sets;
using static Coilwright.Physics.Winding.WindingDirection;
using static Coilwright.Workshop.Polarity.PoleTop;

namespace Coilwright.Workshop.Tests.Sets;

/// <summary>Story 7 for whole pieces: phase and hum of any two and of every switch position.</summary>
public sealed class SetPhaseTests
{
    [Fact]
    public void Three_single_coils_with_the_middle_one_reversed_answer_for_every_position()
    {
        SetPhase phase = SetPhase.Of([
            ("neck", [Coil(Clockwise, North)]),
            ("middle", [Coil(CounterClockwise, South)]),
            ("bridge", [Coil(Clockwise, North)]),
        ]);
        Assert.False(phase.IsRed);
        Assert.Equal(
            [
                "neck+middle: in phase, hum cancels",
                "neck+bridge: in phase, hum adds",
                "middle+bridge: in phase, hum cancels",
                "neck+middle+bridge: in phase, hum cancels in part",
            ],
            phase.Positions.Select(position => $"{string.Join('+', position.Places)}: {position.Answer.Words}")
        );
    }

    [Fact]
    public void A_piece_that_works_against_the_others_is_named()
    {
        SetPhase phase = SetPhase.Of([("neck", [Coil(Clockwise, North)]), ("bridge", [Coil(CounterClockwise, North)])]);
        Assert.True(phase.IsRed);
        Assert.Equal("neck and bridge: out of phase, hum cancels", phase.Words);
    }

    [Fact]
    public void A_pair_beside_a_single_coil_leaves_the_hum_of_the_single_one()
    {
        SetPhase phase = SetPhase.Of([
            ("neck", [Coil(Clockwise, North, 2)]),
            ("bridge", [Coil(Clockwise, North), Coil(CounterClockwise, South) with { Name = "second" }]),
        ]);
        Assert.Equal("in phase, hum cancels in part", phase.Positions.Single().Answer.Words);
        Assert.Equal(20 * Math.Log10(0.5), phase.Positions.Single().Answer.HumLevelDb, 9); // 2 of 2 + 1 + 1
    }

    private static CoilSigns Coil(WindingDirection direction, PoleTop pole, double turnsArea = 1) =>
        new("main", direction, SeenFrom.Top, HotEnd.Finish, pole, turnsArea);
}
