namespace Coilwright.Physics.Circuit;

/// <summary>A volume control: its track, and the setting from 0 to 1 (1 = full), linear in resistance.</summary>
public readonly record struct VolumeControl(double ResistanceOhm, double Setting);

/// <summary>A tone control: track, capacitor and setting; at 1 the whole track is in series with the capacitor, at 0 the capacitor alone hangs across the pickup.</summary>
public readonly record struct ToneControl(double ResistanceOhm, double CapacitorF, double Setting);

/// <summary>What hangs on the pickup. Every part is optional. SI units.</summary>
public sealed record LoadCircuit
{
    public VolumeControl? Volume { get; init; }
    public ToneControl? Tone { get; init; }
    public double CableCapacitanceF { get; init; }

    /// <summary>Input resistance of what comes behind, Ω; null for none.</summary>
    public double? InputResistanceOhm { get; init; }
    public double InputCapacitanceF { get; init; }

    /// <summary>No load at all.</summary>
    public static LoadCircuit None { get; } = new();
}
