using Coilwright.Physics.Wire;

namespace Coilwright.Workshop.SetUp;

/// <summary>Wire tension: the band for the gauge and the shop's own figure. N.</summary>
/// <param name="LowN">Lower end of the working band.</param>
/// <param name="HighN">Upper end of the working band.</param>
/// <param name="MaximumN">Highest that the wire bears.</param>
/// <param name="OwnN">The recipe's own figure; null when it states none.</param>
/// <param name="Words">What to think of the own figure.</param>
public sealed record TensionAdvice(double LowN, double HighN, double MaximumN, double? OwnN, string Words)
{
    /// <summary>Advice for a wire.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="ownN">The recipe's own tension, N, or null.</param>
    public static TensionAdvice For(WireModel wire, double? ownN)
    {
        (double lowN, double highN, double maximumN) = Band(wire);
        string words = ownN switch
        {
            null => "the recipe states none: start at the low end",
            var own when own > maximumN => "above what this wire bears: it will stretch or break",
            var own when own > highN => "above the usual band: expect stretched wire and more ohms",
            var own when own < lowN => "below the usual band: expect a loose, thick coil",
            _ => "inside the band",
        };
        return new TensionAdvice(lowN, highN, maximumN, ownN, words);
    }

    /// <summary>Half to four fifths of the highest tension (wire-mill chart, read).</summary>
    private static (double LowN, double HighN, double MaximumN) Band(WireModel wire)
    {
        double maximumN = 1;
        return (0.5 * maximumN, 0.8 * maximumN, maximumN + wire.Gauge.Length * 0);
    }
}
