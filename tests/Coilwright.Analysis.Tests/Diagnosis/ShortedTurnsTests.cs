using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Analysis.Tests.Diagnosis;

public sealed class ShortedTurnsTests
{
    // a worked example from memory, not a measurement: 8,000 turns, 6.20 kΩ, 2.5 H: Q(3 kHz) is 7.6; a hundred shorted turns leave 6.12 kΩ,
    // 2.44 H at 100 Hz and Q 4.4
    [Fact]
    public void A_hundred_of_eight_thousand_turns_give_the_worked_figures()
    {
        const double Part = 100.0 / 8000,
            Ohm = 6200,
            Henry = 2.5;
        (double henryShift, _) = ShortedTurns.Shift(Part, 2 * Math.PI * 100 * Henry / Ohm);
        (_, double qualityShift) = ShortedTurns.Shift(Part, 2 * Math.PI * 3000 * Henry / Ohm);
        double henry = Henry * Math.Exp(henryShift),
            quality = 2 * Math.PI * 3000 * Henry / Ohm * Math.Exp(qualityShift);
        Assert.Equal(2.44, henry, 0.005);
        Assert.Equal(4.4, quality, 0.05);
    }

    [Fact] // energy, in place of the impedance formula
    public void Input_power_equals_what_both_loops_burn() =>
        Gen.Select(Gen.Double[0.002, 0.9], Gen.Double[0.1, 30])
            .ForAll(
                (part, reactance) =>
                {
                    (double henry, double quality) = ShortedTurns.Shift(part, reactance);
                    double seenX = Math.Exp(henry) * reactance,
                        seenR = seenX / (Math.Exp(quality) * reactance);
                    double kappa = 1 + 0.3 * (1 - part),
                        mutual = reactance * (part - kappa * part * part);
                    // per unit of input current squared
                    double loopCurrentSquared = mutual * mutual / (part * part + Math.Pow(reactance * kappa * part * part, 2));
                    double burnt = 1 - part + loopCurrentSquared * part;
                    return Math.Abs(seenR - burnt) < 1e-9 * burnt;
                }
            );

    [Fact]
    public void Nothing_shorted_moves_nothing()
    {
        (double henry, double quality) = ShortedTurns.Shift(1e-9, 8, 1.2);
        Assert.Equal(0, henry, 1e-7);
        Assert.Equal(0, quality, 1e-6);
    }
}
