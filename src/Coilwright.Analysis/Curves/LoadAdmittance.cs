using System.Numerics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Curves;

/// <summary>What a load that hangs straight across the pickup takes from it.</summary>
public static class LoadAdmittance
{
    /// <summary>True when a load hangs straight across the pickup, so that what is read is the voltage at its terminals.</summary>
    /// <param name="load">The load: any tone control, cable and input; a volume control only when full.</param>
    public static bool IsAcross(LoadCircuit load) => load.IsPlain && load.Volume is null or { Setting: 1 };

    /// <summary>Admittance of a load across the pickup, S.</summary>
    /// <param name="load">One for which <see cref="IsAcross"/> holds.</param>
    /// <param name="frequencyHz">Frequency, Hz, above 0.</param>
    /// <exception cref="ArgumentException">The load divides the voltage or has a stage of its own.</exception>
    public static Complex At(LoadCircuit load, double frequencyHz)
    {
        if (!IsAcross(load))
        {
            throw new ArgumentException("The load does not hang straight across the pickup.", nameof(load));
        }

        double omega = 2 * Math.PI * frequencyHz;
        double conductance = load.InputResistanceOhm is { } input ? 1 / input : 0;
        conductance += load.Volume is { } volume ? 1 / volume.ResistanceOhm : 0;
        Complex sum = new(conductance, omega * (load.CableCapacitanceF + load.InputCapacitanceF));
        if (load.Tone is { CapacitorF: > 0 } tone)
        {
            sum += 1 / new Complex(tone.ResistanceOhm * tone.Setting, -1 / (omega * tone.CapacitorF));
        }

        return sum;
    }
}
