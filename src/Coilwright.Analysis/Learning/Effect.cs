namespace Coilwright.Analysis.Learning;

/// <summary>What a coil has in common with others, so that its readings say something of theirs.</summary>
public enum EffectKind
{
    /// <summary>Everything that the shop makes.</summary>
    Shop,

    /// <summary>The bobbin: length of the mean turn, and how the wire lies on it.</summary>
    Bobbin,

    /// <summary>The bobbin with what stands in it.</summary>
    Core,

    /// <summary>The wire's specification: gauge, enamel, film.</summary>
    Wire,

    /// <summary>What was bought together.</summary>
    Lot,

    /// <summary>One spool of a lot.</summary>
    Spool,

    /// <summary>The winder, with its counter.</summary>
    Winder,
}

/// <summary>One bobbin, one lot, one spool.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">What tells it from others of its kind.</param>
public readonly record struct Effect(EffectKind Kind, string Name);

/// <summary>An effect of a coil, and how far such effects lie from nothing before anything was read.</summary>
/// <param name="Effect">The effect.</param>
/// <param name="Variance">Variance of the logarithm of the ratio measured over forecast, above zero.</param>
public sealed record EffectPrior(Effect Effect, double Variance);

/// <summary>One reading of one coil against its forecast.</summary>
/// <param name="LogRatio">ln of measured over forecast.</param>
/// <param name="Effects">What the coil has in common with others.</param>
public sealed record LearningReading(double LogRatio, IReadOnlyList<EffectPrior> Effects);

/// <summary>Readings that have every effect in common, taken together.</summary>
/// <param name="Effects">Their effects.</param>
/// <param name="Precision">Sum of the weights of the readings: one over the variance of <paramref name="Mean"/>.</param>
/// <param name="Mean">Weighted mean of ln of measured over forecast.</param>
/// <param name="Coils">How many coils; 0 for a measured length of wire.</param>
/// <param name="Good">How many of them count as good: the sum of their probabilities.</param>
public sealed record LearningCell(IReadOnlyList<EffectPrior> Effects, double Precision, double Mean, int Coils, double Good);
