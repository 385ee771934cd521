namespace Coilwright.Analysis.Diagnosis;

/// <summary>What is known of one coil beside what was wanted of it. Everything measured is optional.</summary>
public sealed record CoilEvidence
{
    /// <summary>Spool it was wound from, by its label; empty when nobody wrote it down. Coils of one spool share its wire.</summary>
    public string Spool { get; init; } = "";

    /// <summary>True when the meter found no connection.</summary>
    public bool Open { get; init; }

    /// <summary>Resistance at 20 °C, Ω, above 0.</summary>
    public double? OhmAt20C { get; init; }

    /// <summary>Resistance wanted at 20 °C, Ω, above 0.</summary>
    public required double NominalOhm { get; init; }

    /// <summary>
    /// Standard deviation of what all coils of the batch have in common against the nominal, wire apart, as a part of one.
    /// </summary>
    public double OhmOffset { get; init; } = 0.006;

    /// <summary>Standard deviation of the resistance meter and its temperature correction, as a part of one.</summary>
    public double OhmReading { get; init; } = 0.002;

    /// <summary>False when nobody wrote a temperature down.</summary>
    public bool TemperatureKnown { get; init; }

    /// <summary>True when the wire's ohms per metre were measured, so that the spool is hardly to blame.</summary>
    public bool WireMeasured { get; init; }

    /// <summary>Inductance read over inductance wanted at the same frequency.</summary>
    public double? InductanceRatio { get; init; }

    /// <summary>Standard deviation of the wanted inductance (forecast or target), common to the batch, as a part of one.</summary>
    public double InductanceOffset { get; init; } = 0.01;

    /// <summary>
    /// Inductance read over the recipe's target, where it has one at this frequency, else over what a good coil reads: what is said of a
    /// whole batch goes by it. Null takes <see cref="InductanceRatio"/>.
    /// </summary>
    public double? InductanceOverWanted { get; init; }

    /// <summary>True where that is a target.</summary>
    public bool InductanceHasTarget { get; init; }

    /// <summary>
    /// ωL/R of a good coil, R its direct-current resistance, at the frequency of the inductance reading; 0 for a frequency so low that a
    /// short carries no current.
    /// </summary>
    public double ReactanceAtInductance { get; init; }

    /// <summary>Q read over Q expected at the same frequency.</summary>
    public double? QualityRatio { get; init; }

    /// <summary>Standard deviation of the expected Q, common to the batch, as a part of one.</summary>
    public double QualityOffset { get; init; } = 0.05;

    /// <summary>ωL/R of a good coil, R its direct-current resistance, at the frequency of the Q reading.</summary>
    public double ReactanceAtQuality { get; init; } = 7.6;

    /// <summary>
    /// ω²LC of a good coil with its own capacitance at the frequency of the Q reading: 0 far below its resonance, 1 at it.
    /// </summary>
    public double NearnessAtQuality { get; init; }

    /// <summary>AC over DC resistance of a good coil at the frequency of the Q reading, 1 or more.</summary>
    public double AcOverDc { get; init; } = 1;

    /// <summary>Inductance without its cores over inductance wanted, 0…1; 1 for an air coil.</summary>
    public double AirRatio { get; init; } = 0.75;

    /// <summary>Turns on the counter over turns of the recipe.</summary>
    public double? TurnsRatio { get; init; }

    /// <summary>Turns of the recipe.</summary>
    public double NominalTurns { get; init; }

    /// <summary>How many coils in series the reading was taken across.</summary>
    public int CoilsInSeries { get; init; } = 1;
}
