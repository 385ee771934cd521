namespace Coilwright.Analysis.Diagnosis;

/// <summary>What is known of one coil beside what was wanted of it. Everything measured is optional.</summary>
public sealed record CoilEvidence
{
    /// <summary>True when the meter found no connection.</summary>
    public bool Open { get; init; }

    /// <summary>Resistance at 20 °C, Ω, above 0.</summary>
    public double? OhmAt20C { get; init; }

    /// <summary>Resistance wanted at 20 °C, Ω, above 0.</summary>
    public required double NominalOhm { get; init; }

    /// <summary>Standard deviation of the nominal and the reading together, as a part of one.</summary>
    public double OhmSpread { get; init; } = 0.004;

    /// <summary>False when nobody wrote a temperature down.</summary>
    public bool TemperatureKnown { get; init; }

    /// <summary>Inductance read over inductance wanted at the same frequency.</summary>
    public double? InductanceRatio { get; init; }

    /// <summary>Standard deviation of that ratio, as a part of one.</summary>
    public double InductanceSpread { get; init; } = 0.01;

    /// <summary>Q read over Q expected at the same frequency.</summary>
    public double? QualityRatio { get; init; }

    /// <summary>Turns on the counter over turns of the recipe.</summary>
    public double? TurnsRatio { get; init; }

    /// <summary>Turns of the recipe.</summary>
    public double NominalTurns { get; init; }

    /// <summary>How many coils in series the reading was taken across.</summary>
    public int CoilsInSeries { get; init; } = 1;
}

/// <summary>A cause by its name in the file format, its probability among those considered, and a word on its size.</summary>
public sealed record ProbableCause(string Name, double Probability, string Detail);
