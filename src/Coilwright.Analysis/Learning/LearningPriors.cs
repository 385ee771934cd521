namespace Coilwright.Analysis.Learning;

/// <summary>What is taken to hold before anything was read. Our assumptions, no source, except where said.</summary>
/// <param name="CoilDeviation">Standard deviation of good coils about their bobbin and wire, a part of one, above zero.</param>
public sealed record LearningPriors(double CoilDeviation)
{
    /// <summary>Of the mean of a shop's resistances less is no more than its meter's own error. Our assumption.</summary>
    public const double LeastResistance = 0.001;

    /// <summary>The same of its inductances: the meter, and the coil's own capacitance across it. Our assumption.</summary>
    public const double LeastInductance = 0.01;

    /// <summary>Good coils scatter so much in DC resistance: what a bench meter and a room's temperature leave.</summary>
    public static LearningPriors Resistance { get; } = new(0.005);

    /// <summary>And so much in inductance.</summary>
    public static LearningPriors Inductance { get; } = new(0.01);

    /// <summary>How many coils <see cref="CoilDeviation"/> weighs as.</summary>
    public double Weight { get; init; } = 4;

    /// <summary>How many effects of a kind, such as lots, their starting variance weighs as.</summary>
    public double KindWeight { get; init; } = 8;

    /// <summary>Part of the coils that are taken to be bad, weighing as <see cref="BadWeight"/> coils.</summary>
    public double BadPart { get; init; } = 0.03;

    /// <summary>How many coils <see cref="BadPart"/> weighs as.</summary>
    public double BadWeight { get; init; } = 30;

    /// <summary>Standard deviation of bad coils about the good ones, a part of one.</summary>
    public double BadDeviation { get; init; } = 0.1;
}
