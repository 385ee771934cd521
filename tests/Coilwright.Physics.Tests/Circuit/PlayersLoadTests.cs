using Coilwright.Physics.Circuit;

namespace Coilwright.Physics.Tests.Circuit;

/// <summary>
/// Response on the player's load: 2.5 H, 120 pF, 6.2 kΩ; the tone capacitor of 22 nF and the 470 pF of cable behind the controls are common
/// practice.
/// </summary>
/// <remarks>
/// Printed figures by arithmetic from the stated parts. The printed 9.19 and 4.14 kHz are 1/(2π√LC); the resistance puts the top of the
/// curve 4 and 10 Hz lower,
/// so they hold to one unit of their last digit. The printed gains count from the induced voltage, ours from the level at 20 Hz: the
/// difference is that level.
/// </remarks>
public sealed class PlayersLoadTests
{
    private const double LastDigitHz = 10;
    private static readonly LumpedPickup s_pickup = new(6200, 2.5, 120e-12);

    [Theory]
    [InlineData(0, 9190)]
    [InlineData(470e-12, 4140)]
    public void Bare_it_peaks_at_9_19_kHz_and_with_470_pF_of_cable_at_4_14_kHz(double cableF, double printedHz)
    {
        double peakHz = PickupResponse.FindPeak(s_pickup, new LoadCircuit { CableCapacitanceF = cableF })!.Value.FrequencyHz;
        double omegaSquared = 1 / (s_pickup.InductanceH * (s_pickup.CapacitanceF + cableF));
        double damped = omegaSquared - Math.Pow(s_pickup.ResistanceOhm / s_pickup.InductanceH, 2) / 2;
        Assert.Equal(printedHz, Math.Sqrt(omegaSquared) / (2 * Math.PI), LastDigitHz / 2);
        Assert.Equal(Math.Sqrt(damped) / (2 * Math.PI), peakHz, 1e-6 * peakHz);
        Assert.Equal(printedHz, peakHz, LastDigitHz);
    }

    [Theory]
    [InlineData(250e3, 3.6, 3760)]
    [InlineData(500e3, 7.6, 4030)]
    public void With_two_controls_and_an_input_the_peak_is_lower_and_blunter(double controlOhm, double gainDb, double frequencyHz)
    {
        LoadCircuit load = new()
        {
            Volume = new(controlOhm, 1),
            Tone = new(controlOhm, 22e-9, 1),
            CableCapacitanceF = 470e-12,
            InputResistanceOhm = 1e6,
        };
        ResonancePeak peak = PickupResponse.FindPeak(s_pickup, load)!.Value;
        double fromInduced = peak.GainDb + PickupResponse.Compute(s_pickup, load, [20]).LowFrequencyGainDb;
        Assert.Equal(gainDb, fromInduced, 0.05);
        Assert.Equal(frequencyHz, peak.FrequencyHz, LastDigitHz);
    }

    [Fact]
    public void Two_peaks_with_a_known_added_capacitor_give_back_120_pF()
    {
        // Method: read. C = C_added / ((f₀/f₁)² − 1), for resonances 1/(2π√LC): the printed ones give 120 pF.
        Assert.Equal(120, Own(9190, 4140), 0.5);

        // The tops of the curve lie lower by R²/(2L²) in ω²; put back, the method is exact.
        double Undamped(double cableF) =>
            Math.Sqrt(
                Math.Pow(PickupResponse.FindPeak(s_pickup, new LoadCircuit { CableCapacitanceF = cableF })!.Value.FrequencyHz, 2)
                    + Math.Pow(s_pickup.ResistanceOhm / s_pickup.InductanceH / (2 * Math.PI), 2) / 2
            );
        Assert.Equal(120, Own(Undamped(0), Undamped(470e-12)), 0.001);

        static double Own(double bareHz, double loadedHz) => 470 / (Math.Pow(bareHz / loadedHz, 2) - 1);
    }
}
