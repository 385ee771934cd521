using System.Globalization;

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
            ["dcResistance"] = pickup.DcResistance.Value,
            ["inductance"] = pickup.Inductance.Value,
            ["capacitance"] = pickup.Capacitance.Value,
            ["hum"] = Math.Abs(pickup.HumEffectiveArea.Value),
            ["build"] = prediction.Coils.Max(coil => coil.Build.Value),
            ["wireLength"] = prediction.Coils.Sum(coil => coil.WireLength.Value),
            ["wireMass"] = prediction.Coils.Sum(coil => coil.WireMass.Value),
        };
        AddPeak(values, "unloadedPeak", pickup.UnloadedResonance);
        AddPeak(values, "loadedPeak", pickup.LoadedResonance);
        if (prediction.Coils.All(coil => coil.Fill is not null))
        {
            values["fill"] = prediction.Coils.Max(coil => coil.Fill!.Value);
        }

        if (pickup.Strings.Count > 0)
        {
            values["output"] = NamedQuantity.OutputOf(pickup.Strings.Select(one => one.Sensitivity.Value));
        }

        if (prediction.Coils.Count == 1)
        {
            values["meanTurnLength"] = prediction.Coils[0].MeanTurnLength.Value;
            values["airInductance"] = prediction.Coils[0].AirInductance.Value;
            return values;
        }

        values["coupling"] = pickup.Coupling?.Value ?? 0;
        for (int c = 0; c < prediction.Coils.Count; c++)
        {
            string of = string.Create(CultureInfo.InvariantCulture, $"coils[{c}].");
            values[of + "dcResistance"] = prediction.Coils[c].DcResistance.Value;
            values[of + "inductance"] = prediction.Coils[c].Inductance.Value;
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
