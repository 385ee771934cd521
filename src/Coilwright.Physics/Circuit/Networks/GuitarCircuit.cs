namespace Coilwright.Physics.Circuit.Networks;

/// <summary>How coils of a pickup, or pickups of a guitar, are joined.</summary>
public enum Joining
{
    /// <summary>Each finish to the next start.</summary>
    Series,

    /// <summary>Like ends together.</summary>
    Parallel,
}

/// <summary>One coil in a circuit. SI units.</summary>
/// <param name="Branch">Series branch of the whole winding.</param>
/// <param name="CapacitanceF">Capacitance across the whole winding, F.</param>
public sealed record CircuitCoil(ISeriesBranch Branch, double CapacitanceF)
{
    /// <summary>A word for netlists and messages.</summary>
    public string Name { get; init; } = "coil";

    /// <summary>Loss resistance across the whole winding, Ω; null for none.</summary>
    public double? ParallelLossOhm { get; init; }

    /// <summary>
    /// Voltage the string induces in the whole winding, relative to the circuit's 1 V; the sign is that of winding × magnet. 0 for a dummy
    /// coil.
    /// </summary>
    public double Level { get; init; } = 1;

    /// <summary>True with start and finish exchanged.</summary>
    public bool Reversed { get; init; }

    /// <summary>Share of the turns from the start to the tap, when the coil is used from there; null for the whole coil.</summary>
    public double? TapShare { get; init; }
}

/// <summary>Mutual inductance of two coils of a pickup, H, positive when currents from start to finish help each other.</summary>
/// <param name="First">Number of one coil, from 0, in the pickup's list.</param>
/// <param name="Second">Number of the other.</param>
/// <param name="InductanceH">Mutual inductance of the whole windings, H, −100 kH…100 kH.</param>
public readonly record struct MutualInductance(int First, int Second, double InductanceH);

/// <summary>One pickup in a circuit, with controls of its own if it has any.</summary>
/// <param name="Coils">Its coils, at least one, in the order in which they are joined.</param>
public sealed record CircuitPickup(IReadOnlyList<CircuitCoil> Coils)
{
    /// <summary>A word for netlists and messages.</summary>
    public string Name { get; init; } = "pickup";

    /// <summary>Mutual inductances of its coils, each pair once; empty for coils that do not couple.</summary>
    public IReadOnlyList<MutualInductance> Mutual { get; init; } = [];

    /// <summary>How its coils are joined.</summary>
    public Joining Joined { get; init; } = Joining.Series;

    /// <summary>Number of the only coil in use; the others hang open. Null for all.</summary>
    public int? OnlyCoil { get; init; }

    /// <summary>True with the pickup's two wires exchanged.</summary>
    public bool Reversed { get; init; }

    /// <summary>A volume control of its own, behind its tone control; null for none.</summary>
    public VolumeControl? Volume { get; init; }

    /// <summary>A tone control of its own, across its terminals; null for none.</summary>
    public ToneControl? Tone { get; init; }
}

/// <summary>Everything between the strings and the amplifier: pickups, selector, controls, buffer, cable, input.</summary>
/// <param name="Pickups">All pickups of the instrument.</param>
/// <param name="Load">Controls shared by all, buffer, cable and input, in this order.</param>
public sealed record GuitarCircuit(IReadOnlyList<CircuitPickup> Pickups, LoadCircuit Load)
{
    /// <summary>Numbers of the pickups that the selector lets through; the others are cut off.</summary>
    public IReadOnlyList<int> Selected { get; init; } = [.. Enumerable.Range(0, Pickups.Count)];

    /// <summary>How the selected pickups are joined.</summary>
    public Joining Joined { get; init; } = Joining.Parallel;

    /// <summary>One pickup of one coil on a load.</summary>
    /// <param name="branch">Series branch of the coil.</param>
    /// <param name="capacitanceF">Capacitance across it, F, 0…1 mF.</param>
    /// <param name="parallelLossOhm">Loss resistance across it, Ω, 1 mΩ…1 PΩ; null for none.</param>
    /// <param name="load">Controls, buffer, cable and input.</param>
    public static GuitarCircuit FromCoil(ISeriesBranch branch, double capacitanceF, double? parallelLossOhm, LoadCircuit load) =>
        new([new CircuitPickup([new CircuitCoil(branch, capacitanceF) { ParallelLossOhm = parallelLossOhm }])], load);
}
