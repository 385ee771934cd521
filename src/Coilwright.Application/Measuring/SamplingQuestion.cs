using Coilwright.Analysis.Sampling;

namespace Coilwright.Application.Measuring;

/// <summary>A lot that is to be judged by a sample.</summary>
/// <param name="Lot">Pieces in the lot.</param>
/// <param name="AqlPercent">Acceptable quality level, % defective.</param>
/// <param name="Level">Inspection level of the tables.</param>
/// <param name="Inspection">How sharply it is looked at.</param>
/// <param name="Measured">True to measure instead of counting.</param>
public sealed record SamplingQuestion(int Lot, double AqlPercent, string Level, Inspection Inspection, bool Measured)
{
    /// <summary>Acceptable quality level unless another is said, %; common practice, no source.</summary>
    public const double UsualAqlPercent = 1;

    /// <summary>Inspection level of the tables unless another is said.</summary>
    public const string UsualLevel = "II";

    /// <summary>Largest lot.</summary>
    public const int MostPieces = 1_000_000;
}

/// <summary>A plan of the tables.</summary>
/// <param name="Asked">What it was asked for.</param>
/// <param name="Counted">A plan that counts defective pieces; null where pieces are measured.</param>
/// <param name="ByMeasuring">A plan that measures; null where defective pieces are counted.</param>
public sealed record SamplingAnswer(SamplingQuestion Asked, AttributePlan? Counted, TabulatedVariablesPlan? ByMeasuring);
