using System.Globalization;
using Coilwright.Formats.Responses;
using Coilwright.Papers.Formatting;

namespace Coilwright.Output;

/// <summary>A response for people.</summary>
internal static class ResponseFormatter
{
    public static void Write(TextWriter writer, string name, ResponseAnswer answer)
    {
        writer.WriteLine(name);
        writer.WriteLine(
            answer.Peak is { } peak
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"  peak   {FigureFormatter.Value(peak.FrequencyHz, "Hz", 4)}, {peak.GainDb:+0.0;-0.0} dB, Q {peak.Q:0.00}"
                )
                : "  no peak: the curve never rises above its level at 20 Hz"
        );
        writer.WriteLine(
            answer.Minus3DbHz is { } crossing
                ? $"  −3 dB  {FigureFormatter.Value(crossing, "Hz", 4)}"
                : "  −3 dB  not reached up to the last frequency"
        );
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  level at 20 Hz {answer.LevelDb:+0.00;-0.00} dB of the induced voltage; thermal noise {answer.NoiseDbv:0.0} dBV from "
                    + $"20 Hz to 20 kHz at 20 °C"
            )
        );
        foreach (ResponseLine line in answer.Marks)
        {
            writer.WriteLine(
                $"  at {FigureFormatter.Value(line.FrequencyHz, "Hz")}: {FigureFormatter.Value(line.GainDb, "dB")}, "
                    + $"{FigureFormatter.Value(line.ImpedanceOhm, "Ω")}"
            );
        }

        if (answer is { Against: { } against, Peak: { } now } && against.Peak is { } before)
        {
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  against {against.Name}: peak {100 * (now.FrequencyHz / before.FrequencyHz - 1):+0.0;-0.0} %, "
                        + $"{now.GainDb - before.GainDb:+0.0;-0.0} dB; level {against.LevelDb:+0.00;-0.00} dB"
                )
            );
        }

        Table table = new("frequency", "gain", "phase", "impedance");
        int step = Math.Max(1, (answer.Lines.Count + 23) / 24);
        for (int index = 0; index < answer.Lines.Count; index += step)
        {
            ResponseLine line = answer.Lines[index];
            table.Add(
                FigureFormatter.Value(line.FrequencyHz, "Hz"),
                FigureFormatter.Value(line.GainDb, "dB"),
                line.PhaseDeg.ToString("0.0", CultureInfo.InvariantCulture) + "°",
                FigureFormatter.Value(line.ImpedanceOhm, "Ω")
            );
        }

        table.Write(writer);
    }
}
