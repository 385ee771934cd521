using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Analysis.Comparisons;

/// <summary>
/// What a pickup does in its circuit beside its peak, read from the same forecast so that the one propagation gives the intervals.
/// </summary>
internal static class CircuitQuantities
{
    private static readonly double[] s_lowest = [20];

    /// <summary>Q of the peak, the −3 dB point, the level at 20 Hz and the thermal noise on a load; NaN where one does not exist.</summary>
    public static IReadOnlyList<NamedQuantity> Create(ForecastVector vector, LoadCircuit load) =>
        [
            new(QuantityKey.LoadedPeakQ, "1", y =>
                y[vector.PlaceOf(PickupResult.LoadedFrequency)] > 0 ? y[vector.PlaceOf(PickupResult.LoadedQ)] : double.NaN
            ),
            new(QuantityKey.Minus3Db, "Hz", y =>
                PickupResponse.FindMinus3Db(vector.BranchOf(y), Farad(vector, y), null, load) ?? double.NaN
            ),
            new(QuantityKey.Level, "dB", y =>
                PickupResponse.Compute(vector.BranchOf(y), Farad(vector, y), null, load, s_lowest) is { IsSilent: false } response
                    ? response.LowFrequencyGainDb
                    : double.NaN
            ),
            new(QuantityKey.Noise, "dBV", y =>
                Level(CircuitResponse.ThermalNoiseV(GuitarCircuit.FromCoil(vector.BranchOf(y), Farad(vector, y), null, load)))
            ),
        ];

    private static double Farad(ForecastVector vector, double[] y) => y[vector.PlaceOf(PickupResult.Capacitance)];

    private static double Level(double volt) => volt > 0 ? 20 * Math.Log10(volt) : double.NaN;
}
