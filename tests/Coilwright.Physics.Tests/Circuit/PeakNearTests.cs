using Coilwright.Physics.Circuit;
using CsCheck;

namespace Coilwright.Physics.Tests.Circuit;

public sealed class PeakNearTests
{
    [Fact]
    public void Climbing_from_near_by_finds_the_peak_that_searching_everywhere_finds() =>
        Gen.Select(Gen.Double[500, 20_000], Gen.Double[0.5, 10], Gen.Double[20e-12, 300e-12], Gen.Double[0, 1e-9], Gen.Double[0.8, 1.25])
            .ForAll(
                (ohm, henry, farad, cable, off) =>
                {
                    LumpedPickup pickup = new(ohm, henry, farad) { Eddy = [new EddyBranch(0.2 * henry, 60e3)] };
                    LoadCircuit load = new()
                    {
                        Volume = new VolumeControl(500e3, 1),
                        CableCapacitanceF = cable,
                        InputResistanceOhm = 1e6,
                    };
                    ResonancePeak? everywhere = PickupResponse.FindPeak(pickup, load);
                    ResonancePeak? near = PickupResponse.FindPeakNear(pickup, farad, null, load, (everywhere?.FrequencyHz ?? 5000) * off);
                    return everywhere is null
                        ? near is null
                        : near is { } found
                            && Math.Abs(found.FrequencyHz / everywhere.Value.FrequencyHz - 1) < 2e-5
                            && Math.Abs(found.GainDb - everywhere.Value.GainDb) < 1e-6;
                }
            );
}
