using System.Globalization;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Forecasts;

/// <summary>A prediction's values by the names that wants and runs use.</summary>
public static class PredictionValues
{
    /// <summary>Name to value in SI or dB; only what exists.</summary>
    public static IReadOnlyDictionary<string, double> FromPrediction(Prediction prediction)
    {
        PickupForecast pickup = prediction.Pickup;
        Dictionary<string, double> values = new(StringComparer.Ordinal)
        {
            [QuantityKey.DcResistance] = pickup.DcResistance.Value,
            [QuantityKey.Inductance] = pickup.Inductance.Value,
            [QuantityKey.Capacitance] = pickup.Capacitance.Value,
            [QuantityKey.Hum] = Math.Abs(pickup.HumEffectiveArea.Value),
            [QuantityKey.Build] = prediction.Coils.Max(coil => coil.Build.Value),
            [QuantityKey.WireLength] = prediction.Coils.Sum(coil => coil.WireLength.Value),
            [QuantityKey.WireMass] = prediction.Coils.Sum(coil => coil.WireMass.Value),
        };
        AddPeak(values, QuantityKey.UnloadedPeak, pickup.UnloadedResonance);
        AddPeak(values, QuantityKey.LoadedPeak, pickup.LoadedResonance);
        if (prediction.Coils.All(coil => coil.Fill is not null))
        {
            values[QuantityKey.Fill] = prediction.Coils.Max(coil => coil.Fill!.Value);
        }

        if (pickup.Strings.Count > 0)
        {
            values[QuantityKey.Output] = NamedQuantity.OutputOf(pickup.Strings.Select(one => one.Sensitivity.Value));
        }

        if (prediction.Coils.Count == 1)
        {
            values[QuantityKey.MeanTurnLength] = prediction.Coils[0].MeanTurnLength.Value;
            values[QuantityKey.AirInductance] = prediction.Coils[0].AirInductance.Value;
            return values;
        }

        values["coupling"] = pickup.Coupling?.Value ?? 0;
        for (int c = 0; c < prediction.Coils.Count; c++)
        {
            string of = string.Create(CultureInfo.InvariantCulture, $"coils[{c}].");
            values[of + QuantityKey.DcResistance] = prediction.Coils[c].DcResistance.Value;
            values[of + QuantityKey.Inductance] = prediction.Coils[c].Inductance.Value;
        }

        values["resistanceMismatch"] = Mismatch(prediction, coil => coil.DcResistance.Value);
        values["inductanceMismatch"] = Mismatch(prediction, coil => coil.Inductance.Value);
        return values;
    }

    private static double Mismatch(Prediction prediction, Func<CoilForecast, double> of)
    {
        double a = of(prediction.Coils[0]),
            b = of(prediction.Coils[1]);
        return 2 * (a - b) / (a + b);
    }

    private static void AddPeak(Dictionary<string, double> values, string name, ResonanceForecast? peak)
    {
        if (peak is not null)
        {
            values[name] = peak.Frequency.Value;
            values[name + "Gain"] = peak.Gain.Value;
        }
    }
}
