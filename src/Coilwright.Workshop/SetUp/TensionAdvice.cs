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
    /// <summary>Whose band it is.</summary>
    public const string Source = TensionBand.Source;

    /// <summary>Advice for a wire.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="ownN">The recipe's own tension, N, or null.</param>
    public static TensionAdvice For(WireModel wire, double? ownN)
    {
        TensionBand band = TensionBand.For(wire.Gauge) ?? TensionBand.For(wire.BareDiameterM.Value);
        string words = ownN switch
        {
            null => "the recipe states none: start at the low end",
            var own when own > band.MaximumN => "above what this wire bears: it will stretch or break",
            var own when own > band.HighN => "above the usual band: expect stretched wire and more ohms",
            var own when own < band.LowN => "below the usual band: expect a loose, thick coil",
            _ => "inside the band",
        };
        return new TensionAdvice(band.LowN, band.HighN, band.MaximumN, ownN, words);
    }
}
