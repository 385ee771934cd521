using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;

namespace Coilwright.Formats.Forecasts;

/// <summary>Writes a prediction in the public file format "coilwright.prediction/1".</summary>
public static class PredictionJson
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The whole prediction as JSON text.</summary>
    /// <param name="prediction">What to write.</param>
    /// <param name="withDerivations">True adds to each quantity how it came about; the plain format leaves that out.</param>
    public static string Write(Prediction prediction, bool withDerivations = false)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, Options))
        {
            json.WriteStartObject();
            json.WriteString("format", "coilwright.prediction/1");
            json.WriteStartArray("coils");
            foreach (CoilForecast coil in prediction.Coils)
            {
                json.WriteStartObject();
                json.WriteString("name", coil.Name);
                foreach (Figure figure in coil.All)
                {
                    WriteFigure(json, figure.Name, figure, withDerivations);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            WritePickup(json, prediction.Pickup, withDerivations);
            WriteWarnings(json, prediction.Warnings);
            SensitivityJson.Write(json, prediction.Sensitivity);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>A quantity object of the file format: value, unit, low and high unless exact, basis.</summary>
    public static void WriteQuantity(Utf8JsonWriter json, string name, Estimate estimate, string unit)
    {
        json.WriteStartObject(name);
        WriteQuantityMembers(json, estimate, unit);
        json.WriteEndObject();
    }

    private static void WriteQuantityMembers(Utf8JsonWriter json, Estimate estimate, string unit)
    {
        json.WriteNumber("value", estimate.Value);
        json.WriteString("unit", unit);
        if (!estimate.IsExact)
        {
            json.WriteNumber("low", estimate.Low);
            json.WriteNumber("high", estimate.High);
        }

        json.WriteString(
            "basis",
            estimate.Basis switch
            {
                Basis.Measured => "measured",
                Basis.Learnt => "learnt",
                Basis.Forecast => "forecast",
                _ => "assumed",
            }
        );
    }

    private static void WriteFigure(Utf8JsonWriter json, string name, Figure figure, bool withDerivation)
    {
        json.WriteStartObject(name);
        WriteFigureMembers(json, figure, withDerivation);
        json.WriteEndObject();
    }

    private static void WriteFigureMembers(Utf8JsonWriter json, Figure figure, bool withDerivation)
    {
        WriteQuantityMembers(json, figure.Estimate, figure.Unit);
        if (withDerivation)
        {
            WriteDerivation(json, figure.Derivation);
        }
    }

    private static void WriteDerivation(Utf8JsonWriter json, Derivation derivation)
    {
        json.WriteStartObject("derivation");
        json.WriteString("symbols", derivation.Symbols);
        json.WriteString("numbers", derivation.Numbers);
        json.WriteString("source", derivation.Source);
        if (derivation.NarrowBy is { } narrowBy)
        {
            json.WriteString("narrowBy", narrowBy);
        }

        json.WriteStartArray("inputs");
        foreach (DerivationInput input in derivation.Inputs)
        {
            json.WriteStartObject();
            json.WriteString("name", input.Name);
            WriteQuantityMembers(json, input.Estimate, input.Unit);
            json.WriteString("source", input.Source);
            json.WriteNumber("share", input.VarianceShare);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WritePickup(Utf8JsonWriter json, PickupForecast pickup, bool withDerivations)
    {
        json.WriteStartObject("pickup");
        foreach (Figure figure in (Figure[])[pickup.DcResistance, pickup.Inductance, pickup.Capacitance])
        {
            WriteFigure(json, figure.Name, figure, withDerivations);
        }

        WriteShares(json, pickup.CapacitanceShares, withDerivations);
        WriteResonance(json, "unloadedResonance", pickup.UnloadedResonance, withDerivations);
        WriteResonance(json, "loadedResonance", pickup.LoadedResonance, withDerivations);
        if (pickup.Coupling is { } coupling)
        {
            WriteFigure(json, coupling.Name, coupling, withDerivations);
        }

        foreach (Figure other in pickup.Others)
        {
            WriteFigure(json, other.Name, other, withDerivations);
        }

        json.WriteStartArray("spectrum");
        foreach (SpectrumForecast line in pickup.Spectrum)
        {
            json.WriteStartObject();
            json.WriteNumber("frequency", line.FrequencyHz);
            WriteFigure(json, "inductance", line.Inductance, withDerivations);
            WriteFigure(json, "resistance", line.Resistance, withDerivations);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteStrings(json, pickup, withDerivations);
        WritePoles(json, pickup, withDerivations);
        json.WriteStartObject("hum");
        WriteFigure(json, "effectiveArea", pickup.HumEffectiveArea, withDerivations);
        WriteFigure(json, "residual", pickup.HumResidual, withDerivations);
        foreach (Figure slope in pickup.HumGradient)
        {
            WriteFigure(json, slope.Name, slope, withDerivations);
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteShares(Utf8JsonWriter json, CapacitanceShares? shares, bool withDerivations)
    {
        if (shares is null)
        {
            return;
        }

        json.WriteStartObject("capacitanceShares");
        foreach (Figure share in shares.All)
        {
            WriteFigure(json, share.Name, share, withDerivations);
        }

        json.WriteEndObject();
    }

    private static void WriteStrings(Utf8JsonWriter json, PickupForecast pickup, bool withDerivations)
    {
        json.WriteStartArray("output");
        foreach (StringForecast one in pickup.Strings)
        {
            json.WriteStartObject();
            json.WriteNumber("string", one.Number);
            WriteFigure(json, "linkage", one.Linkage, withDerivations);
            WriteFigure(json, "sensitivity", one.Sensitivity, withDerivations);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("fieldAtStrings");
        foreach (StringForecast one in pickup.Strings)
        {
            json.WriteStartObject();
            WriteFigureMembers(json, one.Field, withDerivations);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WritePoles(Utf8JsonWriter json, PickupForecast pickup, bool withDerivations)
    {
        json.WriteStartArray("poleField");
        foreach (PoleForecast one in pickup.Poles)
        {
            json.WriteStartObject();
            json.WriteNumber("pole", one.Number);
            json.WriteString("coil", one.Coil);
            json.WriteNumber("distance", one.JigM);
            json.WriteStartObject("position");
            json.WriteNumber("x", one.AtM.XM);
            json.WriteNumber("y", one.AtM.YM);
            json.WriteNumber("z", one.AtM.ZM);
            json.WriteEndObject();
            WriteFigure(json, "field", one.Field, withDerivations);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteResonance(Utf8JsonWriter json, string name, ResonanceForecast? resonance, bool withDerivations)
    {
        if (resonance is null)
        {
            return;
        }

        json.WriteStartObject(name);
        WriteFigure(json, "frequency", resonance.Frequency, withDerivations);
        WriteFigure(json, "gain", resonance.Gain, withDerivations);
        WriteFigure(json, "q", resonance.Q, withDerivations);
        json.WriteEndObject();
    }

    private static void WriteWarnings(Utf8JsonWriter json, IReadOnlyList<ForecastWarning> warnings)
    {
        json.WriteStartArray("warnings");
        foreach (ForecastWarning warning in warnings)
        {
            json.WriteStartObject();
            json.WriteString("field", warning.Field);
            json.WriteString("message", warning.Message);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
