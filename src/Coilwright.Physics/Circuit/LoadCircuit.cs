namespace Coilwright.Physics.Circuit;

/// <summary>
/// A volume control: its track, and the share of the track below the wiper from 0 to 1 (1 = full); <see cref="Taper"/> turns a setting into
/// that share.
/// </summary>
/// <param name="ResistanceOhm">Resistance of the whole track, Ω, 1 mΩ…1 GΩ.</param>
/// <param name="Setting">Share of the track below the wiper, 0…1.</param>
public readonly record struct VolumeControl(double ResistanceOhm, double Setting)
{
    /// <summary>What is soldered from the control's input to its wiper to keep the treble; null for none.</summary>
    public TrebleRetainer? Retainer { get; init; }

    /// <summary>
    /// True when the pickup comes in at the wiper and the output leaves at the top, so that several controls do not shut each other.
    /// </summary>
    public bool FromWiper { get; init; }
}

/// <summary>A treble-retaining network across a volume control: a capacitor, a resistor, or both in series or side by side.</summary>
/// <param name="ResistanceOhm">Its resistor, Ω; null for none.</param>
/// <param name="CapacitanceF">Its capacitor, F; null for none.</param>
/// <param name="InSeries">True for one behind the other; means nothing with one part.</param>
public readonly record struct TrebleRetainer(double? ResistanceOhm, double? CapacitanceF, bool InSeries);

/// <summary>A buffer behind the controls: what it shows to them, what drives the cable, and its gain.</summary>
/// <param name="InputOhm">Its input resistance, Ω.</param>
/// <param name="InputF">Its input capacitance, F.</param>
/// <param name="OutputOhm">Its output resistance, Ω.</param>
/// <param name="Gain">Voltage gain as a ratio, 1 for a follower.</param>
public readonly record struct BufferStage(double InputOhm, double InputF, double OutputOhm, double Gain);

/// <summary>
/// A tone control: track, capacitor and setting; at 1 the whole track is in series with the capacitor, at 0 the capacitor alone hangs
/// across the pickup.
/// </summary>
/// <param name="ResistanceOhm">Resistance of the whole track, Ω, 0…1 GΩ.</param>
/// <param name="CapacitorF">The capacitor, F, 0…1 mF.</param>
/// <param name="Setting">Share of the track in series with the capacitor, 0…1.</param>
public readonly record struct ToneControl(double ResistanceOhm, double CapacitorF, double Setting);

/// <summary>What hangs on the pickup. Every part is optional. SI units.</summary>
public sealed record LoadCircuit
{
    /// <summary>Volume control behind the tone control; null for none.</summary>
    public VolumeControl? Volume { get; init; }

    /// <summary>Tone control across the pickup's terminals; null for none.</summary>
    public ToneControl? Tone { get; init; }

    /// <summary>Capacitance of the cable, F, 0…1 mF; zero for none.</summary>
    public double CableCapacitanceF { get; init; }

    /// <summary>Input resistance of what comes behind, Ω; null for none.</summary>
    public double? InputResistanceOhm { get; init; }

    /// <summary>Input capacitance of what comes behind, F, 0…1 mF; zero for none.</summary>
    public double InputCapacitanceF { get; init; }

    /// <summary>A buffer between controls and cable; null for none.</summary>
    public BufferStage? Buffer { get; init; }

    /// <summary>True without a treble-retaining network, buffer, or control wired from its wiper.</summary>
    public bool IsPlain => Buffer is null && Volume is not { Retainer: not null } and not { FromWiper: true };

    /// <summary>No load at all.</summary>
    public static LoadCircuit None { get; } = new();
}
