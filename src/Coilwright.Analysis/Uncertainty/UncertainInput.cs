using Coilwright.Physics;

namespace Coilwright.Analysis.Uncertainty;

/// <summary>How a quantity scatters.</summary>
public enum Scatter
{
    /// <summary>Normal: the interval is value ± half its width.</summary>
    Normal,

    /// <summary>Log-normal: the interval is value times and divided by a factor; the quantity is positive.</summary>
    LogNormal,

    /// <summary>A result that is a sum of skewed parts: its ends lie differently far off, each by what moves it that way.</summary>
    Skewed,

    /// <summary>The same in the logarithm of a positive result.</summary>
    SkewedLog,
}

/// <summary>One independent cause of scatter.</summary>
/// <param name="Name">In workshop words.</param>
/// <param name="Unit">SI unit as printed.</param>
/// <param name="Estimate">Value and 95 % interval.</param>
/// <param name="Scatter">Shape of the scatter.</param>
/// <param name="Source">Where the value and the interval come from.</param>
public sealed record UncertainInput(string Name, string Unit, Estimate Estimate, Scatter Scatter, string Source)
{
    /// <summary>
    /// Key of the kind of cause in the file formats, for example "bareDiameter"; inputs of one kind are told as one cause.
    /// </summary>
    public string Cause { get; init; } = "";

    /// <summary>True for what all pieces of a run have in common: one spool, one lot of magnets, one film, one thermometer.</summary>
    public bool IsCommon { get; init; }

    /// <summary>
    /// Part of the half-width that differs from piece to piece, for an input of which the rest is common to a run; 0 and 1 say no more than
    /// <see cref="IsCommon"/>. The two parts add in quadrature.
    /// </summary>
    public double PieceShare { get; init; }

    /// <summary>
    /// What the input is of, where its name does not tell two parts apart; two pickups share an input of one name and part.
    /// </summary>
    public string Part { get; init; } = "";

    /// <summary>The value at <paramref name="deviations"/> standard deviations from the middle.</summary>
    public double ValueAt(double deviations)
    {
        if (Estimate.IsExact)
        {
            return Estimate.Value;
        }

        return Scatter == Scatter.Normal
            ? Estimate.Value + deviations * Estimate.StandardDeviation
            : Estimate.Value * Math.Exp(deviations * Math.Log(Estimate.High / Estimate.Low) / (2 * Estimate.Sigmas95));
    }
}

/// <summary>One result of a model with the interval that its inputs give it.</summary>
/// <param name="Estimate">Value at the middle of the inputs, and the 95 % interval.</param>
/// <param name="Shares">Share of each input in the variance, in the order of the inputs; they sum to 1, or are all 0 for an exact
/// result.</param>
public sealed record PropagatedResult(Estimate Estimate, IReadOnlyList<double> Shares)
{
    /// <summary>True for a positive result that is not there at some end of an input: a peak that is no more.</summary>
    public bool MayVanish { get; init; }
}
