using Coilwright.Workshop.SetUp;

namespace Coilwright.Workshop.Batches;

/// <summary>One thing that can be done with a coil whose wire broke, and what comes of it. SI units.</summary>
/// <param name="Kind">What is then recorded.</param>
/// <param name="Words">The consequence in workshop words.</param>
/// <param name="LostWireM">Wire that goes to scrap, m.</param>
/// <param name="LostWireKg">Its mass, kg.</param>
/// <param name="LostS">Winding time lost at full speed, s; null when no speed is stated.</param>
/// <param name="InductanceFactor">Inductance over the full coil's.</param>
/// <param name="OhmAt20C">Resistance at 20 °C, Ω; null when nothing is left to measure.</param>
public sealed record BreakChoice(
    BatchEventKind Kind,
    string Words,
    double LostWireM,
    double LostWireKg,
    double? LostS,
    double InductanceFactor,
    double? OhmAt20C
)
{
    /// <summary>The choices for a coil with so many real turns on it.</summary>
    public static IReadOnlyList<BreakChoice> At(CoilPlan plan, CoilSetUp setUp, double turnsDone)
    {
        double turns = Math.Clamp(turnsDone, 0, setUp.Turns),
            share = turns / setUp.Turns,
            lostM = plan.WireM(turns);
        IReadOnlyList<string> words = BreakAdvice.Choices(setUp, turns);
        double ohm = setUp.At20C.Expected.Value,
            wholeM = setUp.WireLength.Value;
        return
        [
            new BreakChoice(
                BatchEventKind.Scrapped,
                words[0],
                lostM,
                lostM / wholeM * setUp.WireMass.Value,
                setUp.RunTimeS * share,
                0,
                null
            ),
            new BreakChoice(BatchEventKind.Spliced, words[1], 0, 0, null, 1, ohm),
            new BreakChoice(BatchEventKind.FinishedLow, words[2], 0, 0, null, share * share, ohm * lostM / wholeM),
        ];
    }
}
