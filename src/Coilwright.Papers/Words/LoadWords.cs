using Coilwright.Physics.Circuit;

namespace Coilwright.Papers.Words;

/// <summary>What hangs on a pickup, in one line.</summary>
public static class LoadWords
{
    /// <summary>The parts of the load with their values; "nothing" for none.</summary>
    public static string Of(LoadCircuit load)
    {
        List<string> parts = [];
        if (load.Volume is { } volume)
        {
            parts.Add($"{FigureWords.Value(volume.ResistanceOhm, "Ω")} volume at {FigureWords.Value(volume.Setting, "1")}{(volume.Retainer is null ? "" : " with treble network")}{(volume.FromWiper ? ", fed at its wiper" : "")}");
        }

        if (load.Tone is { } tone)
        {
            parts.Add($"{FigureWords.Value(tone.ResistanceOhm, "Ω")} tone with {FigureWords.Value(tone.CapacitorF, "F")} at {FigureWords.Value(tone.Setting, "1")}");
        }

        if (load.Buffer is { } buffer)
        {
            parts.Add($"buffer of {FigureWords.Value(buffer.InputOhm, "Ω")} and {FigureWords.Value(buffer.InputF, "F")}");
        }

        if (load.CableCapacitanceF > 0)
        {
            parts.Add($"{FigureWords.Value(load.CableCapacitanceF, "F")} cable");
        }

        if (load.InputResistanceOhm is { } input)
        {
            parts.Add($"{FigureWords.Value(input, "Ω")}{(load.InputCapacitanceF > 0 ? " and " + FigureWords.Value(load.InputCapacitanceF, "F") : "")} input");
        }

        return parts.Count > 0 ? string.Join(", ", parts) : "nothing";
    }
}
