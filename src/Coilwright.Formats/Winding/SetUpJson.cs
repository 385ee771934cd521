using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coilwright.Analysis.Forecasts;
using Coilwright.Formats.Forecasts;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Formats.Winding;

/// <summary>Writes a set-up in the file format "coilwright.setup/1".</summary>
public static class SetUpJson
{
    public const string Format = "coilwright.setup/1";

    private static readonly JsonWriterOptions s_options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(WindingSetUp setUp)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("format", Format);
            json.WriteString("recipe", setUp.RecipeName);
            json.WriteString("machine", setUp.Machine);
            WriteBatch(json, setUp.Batch);
            WriteMachine(json, setUp);
            Exact(json, "roomTemperature", setUp.RoomC, "°C", Basis.Assumed);
            json.WriteBoolean("fits", setUp.Fits);
            json.WriteStartArray("coils");
            foreach (CoilSetUp coil in setUp.Coils)
            {
                WriteCoil(json, setUp, coil);
            }

            json.WriteEndArray();
            WritePhase(json, setUp.Phase);
            json.WriteStartArray("cautions");
            foreach (string caution in (string[])[.. Cautions.For(Job.Winding), Cautions.ClosingLine])
            {
                json.WriteStringValue(caution);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteBatch(Utf8JsonWriter json, BatchHeading? batch)
    {
        if (batch is null)
        {
            return;
        }

        json.WriteStartObject("batch");
        json.WriteString("name", batch.Name);
        json.WriteNumber("coils", batch.Coils);
        json.WriteString("firstTag", batch.FirstTag);
        json.WriteString("lastTag", batch.LastTag);
        json.WriteString("spool", batch.Spool);
        json.WriteEndObject();
    }

    private static void WritePhase(Utf8JsonWriter json, RecipePhase? phase)
    {
        if (phase is null)
        {
            return;
        }

        json.WriteStartObject("phase");
        json.WriteBoolean("red", phase.IsRed);
        if (phase.Together is { } together)
        {
            json.WriteString("words", together.Words);
        }

        json.WriteStartArray("firstSwing");
        foreach (CoilSigns coil in phase.Coils)
        {
            json.WriteStartObject();
            json.WriteString("coil", coil.Name);
            json.WriteNumber("sign", coil.FirstSwing);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteMachine(Utf8JsonWriter json, WindingSetUp setUp)
    {
        json.WriteNumber("counterCorrection", setUp.CounterCorrection);
        if (setUp.On is not { } machine)
        {
            return;
        }

        json.WriteString("machineKind", MachineReader.WordOf(machine.Kind));
        json.WriteNumber("spindles", machine.Spindles);
        if (machine.Counter is { } test)
        {
            json.WriteStartObject("counterTest");
            json.WriteNumber("turns", test.Turns);
            json.WriteNumber("counted", test.Counted);
            PredictionJson.WriteQuantity(json, "correction", test.Correction, "1");
            json.WriteEndObject();
        }
    }

    private static void WriteCoil(Utf8JsonWriter json, WindingSetUp setUp, CoilSetUp coil)
    {
        json.WriteStartObject();
        json.WriteString("name", coil.Name);
        json.WriteString("wire", coil.Wire);
        PredictionJson.WriteQuantity(json, "bareDiameter", coil.BareDiameterM, "m");
        PredictionJson.WriteQuantity(json, "overallDiameter", coil.OverallDiameterM, "m");
        Figure(json, coil.WireLength);
        Figure(json, coil.WireMass);
        WriteTension(json, coil.Tension);
        Exact(json, "pitch", coil.PitchM, "m", coil.PitchStated ? Basis.Measured : Basis.Forecast);
        Figure(json, coil.TurnsPerLayer);
        Figure(json, coil.Layers);
        json.WriteNumber("turns", coil.Turns);
        if (setUp.HasCounter)
        {
            json.WriteNumber("counterStop", coil.CounterStop(setUp.CounterCorrection));
        }

        json.WriteString("direction", coil.Direction == WindingDirection.Clockwise ? "clockwise" : "counter-clockwise");
        json.WriteString("seenFrom", "top");
        json.WriteString("spindle", coil.SpindleWords);
        json.WriteString("startSide", coil.StartSide);
        if ((coil.OnMachine is { } on ? on.SpeedRpm : coil.SpeedRpm) is { } speedRpm)
        {
            Exact(json, "speed", speedRpm, "rpm", Basis.Measured);
        }

        if (coil.RunTimeS is { } seconds)
        {
            Exact(json, "runTime", seconds, "s", Basis.Forecast);
        }

        WriteResistance(json, "dcResistanceAt20C", coil.At20C);
        WriteResistance(json, "dcResistanceAtRoom", coil.AtRoom);
        Figure(json, coil.Inductance);
        if (coil.OnMachine is { } onMachine)
        {
            WriteSetting(json, coil, onMachine);
        }

        if (coil.Fill.Fill is { } fill)
        {
            Figure(json, fill);
        }

        Figure(json, coil.Fill.Build);
        json.WriteBoolean("fits", coil.Fill.Fits);
        json.WriteString("fillVerdict", coil.Fill.Words);
        WriteBreak(json, coil);
        json.WriteEndObject();
    }

    private static void WriteSetting(Utf8JsonWriter json, CoilSetUp coil, CoilOnMachine on)
    {
        json.WriteStartObject("setting");
        Exact(json, "pitch", on.Pitch.PitchM, "m", Basis.Forecast);
        json.WriteNumber("pitchOffBy", on.Pitch.OffBy);
        json.WriteString("how", on.Pitch.How);
        Exact(json, "turnsPerLayer", on.TurnsPerLayer, "1", Basis.Forecast);
        Exact(json, "layers", on.Layers, "1", Basis.Forecast);
        json.WriteNumber("stopDoubt", on.StopDoubtTurns);
        json.WriteStartArray("notes");
        foreach (string note in ((string[])[on.Pitch.Note, on.SpeedWords, on.BrakeWords]).Where(note => note.Length > 0))
        {
            json.WriteStringValue(note);
        }

        json.WriteEndArray();
        if (on.Timed is { } timed)
        {
            json.WriteStartObject("timed");
            Exact(json, "seconds", timed.Seconds, "s", Basis.Forecast);
            PredictionJson.WriteQuantity(json, "turns", timed.Turns, "1");
            PredictionJson.WriteQuantity(json, "dcResistanceAt20C", timed.DcResistanceAt20C, "Ω");
            double henry = coil.Inductance.Value;
            PredictionJson.WriteQuantity(
                json,
                "inductance",
                new Estimate(henry, henry * timed.InductanceLow, henry * timed.InductanceHigh, Basis.Forecast),
                "H"
            );
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteBreak(Utf8JsonWriter json, CoilSetUp coil)
    {
        json.WriteStartObject("atBreak");
        json.WriteNumber("exampleTurns", coil.Turns * 0.75);
        json.WriteStartArray("choices");
        foreach (string choice in BreakAdvice.Choices(coil, coil.Turns * 0.75))
        {
            json.WriteStringValue(choice);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteTension(Utf8JsonWriter json, TensionAdvice tension)
    {
        json.WriteStartObject("tension");
        Exact(json, "low", tension.LowN, "N", Basis.Assumed);
        Exact(json, "high", tension.HighN, "N", Basis.Assumed);
        Exact(json, "maximum", tension.MaximumN, "N", Basis.Assumed);
        if (tension.OwnN is { } ownN)
        {
            Exact(json, "own", ownN, "N", Basis.Measured);
        }

        json.WriteString("words", tension.Words);
        json.WriteEndObject();
    }

    private static void WriteResistance(Utf8JsonWriter json, string name, ExpectedResistance resistance)
    {
        json.WriteStartObject(name);
        PredictionJson.WriteQuantity(json, "expected", resistance.Expected, "Ω");
        if (resistance is { LowOhm: { } low, HighOhm: { } high })
        {
            Exact(json, "lowest", low, "Ω", Basis.Measured);
            Exact(json, "highest", high, "Ω", Basis.Measured);
        }

        json.WriteEndObject();
    }

    private static void Figure(Utf8JsonWriter json, Figure figure) =>
        PredictionJson.WriteQuantity(json, figure.Name, figure.Estimate, figure.Unit);

    private static void Exact(Utf8JsonWriter json, string name, double value, string unit, Basis basis) =>
        PredictionJson.WriteQuantity(json, name, Estimate.Exact(value, basis), unit);
}
