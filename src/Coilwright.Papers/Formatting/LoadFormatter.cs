using Coilwright.Physics.Circuit;

namespace Coilwright.Papers.Formatting;

/// <summary>What hangs on a pickup, in one line.</summary>
public static class LoadFormatter
{
    /// <summary>The parts of the load with their values; "nothing" for none.</summary>
    public static string Of(LoadCircuit load)
    {
        List<string> parts = [];
        if (load.Volume is { } volume)
        {
            string network = volume.Retainer is null ? "" : " with treble network",
                wiper = volume.FromWiper ? ", fed at its wiper" : "";
            parts.Add(
                $"{FigureFormatter.Value(volume.ResistanceOhm, "Ω")} volume at {FigureFormatter.Value(volume.Setting, "1")}{network}{wiper}"
            );
        }

        if (load.Tone is { } tone)
        {
            parts.Add(
                $"{FigureFormatter.Value(tone.ResistanceOhm, "Ω")} tone with {FigureFormatter.Value(tone.CapacitorF, "F")} at "
                    + $"{FigureFormatter.Value(tone.Setting, "1")}"
            );
        }

        if (load.Buffer is { } buffer)
        {
            parts.Add($"buffer of {FigureFormatter.Value(buffer.InputOhm, "Ω")} and {FigureFormatter.Value(buffer.InputF, "F")}");
        }

        if (load.CableCapacitanceF > 0)
        {
            parts.Add($"{FigureFormatter.Value(load.CableCapacitanceF, "F")} cable");
        }

        if (load.InputResistanceOhm is { } input)
        {
            string beside = load.InputCapacitanceF > 0 ? " and " + FigureFormatter.Value(load.InputCapacitanceF, "F") : "";
            parts.Add($"{FigureFormatter.Value(input, "Ω")}{beside} input");
        }

        return parts.Count > 0 ? string.Join(", ", parts) : "nothing";
    }
}
