using Coilwright.Physics;

namespace Coilwright.Analysis.Comparisons;

/// <summary>One result of two pickups against each other, every number with its 95 % interval.</summary>
/// <param name="Name">Quantity name of the file formats, for example "dcResistance".</param>
/// <param name="Unit">SI unit as printed.</param>
/// <param name="First">In the first pickup; null where it does not exist, for example without a peak.</param>
/// <param name="Second">In the second.</param>
/// <param name="Difference">Second less first, in the unit; null where either does not exist or comes and goes within the interval.</param>
/// <param name="Ratio">Second over first; null for levels, and for what is not surely above zero.</param>
/// <remarks>
/// What both pickups have in common (one spool, one lot of magnets, one film, the model's own errors) moves both together, so that the
/// interval of a
/// difference is far narrower than the two intervals laid side by side; wire of two sizes comes from two spools and scatters on its own.
/// </remarks>
public sealed record ComparisonLine(string Name, string Unit, Estimate? First, Estimate? Second, Estimate? Difference, Estimate? Ratio)
{
    /// <summary>
    /// True where the change's own 95 % interval leaves out no change, or where the result appears or vanishes; false where the two could
    /// be alike.
    /// </summary>
    public bool Differs =>
        this switch
        {
            { Ratio: { } part } => part.Low > 1 || part.High < 1,
            { Difference: { } change } => change.Low > 0 || change.High < 0,
            _ => First is null != Second is null,
        };
}
