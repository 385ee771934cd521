namespace Coilwright.Physics.Strings;

/// <summary>Where a pickup is deaf along the string.</summary>
/// <param name="ByPlaceHz">Frequencies whose standing wave has no motion to hear at the pickup's place, Hz, rising.</param>
/// <param name="ByApertureHz">Frequencies that cancel within the pickup's own length along the string, wherever it stands, Hz.</param>
public sealed record Notches(IReadOnlyList<double> ByPlaceHz, IReadOnlyList<double> ByApertureHz)
{
    private const double Step = 0.02;

    /// <summary>A dip of the aperture counts from this part of its level at the bottom on: 20 dB.</summary>
    private const double DeepPart = 0.1;

    /// <summary>Finds them on a string.</summary>
    /// <param name="plucked">The string, which gives frequency and wave number of partial n.</param>
    /// <param name="aperture">What is heard along it.</param>
    /// <param name="fromBridgeM">Place of the pickup's middle from the bridge, m.</param>
    /// <param name="highestHz">Highest frequency, Hz.</param>
    /// <remarks>
    /// By place: sin(k·p) = 0 at the pickup's middle, n = m·L/p. By aperture: the dips of <see cref="StringAperture.Travelling"/>.
    /// </remarks>
    public static Notches Of(PluckedString plucked, StringAperture aperture, double fromBridgeM, double highestHz) =>
        new(
            [
                .. Enumerable
                    .Range(1, 1000)
                    .Select(m => plucked.FrequencyHz(m * plucked.LengthM / fromBridgeM))
                    .TakeWhile(hz => hz <= highestHz),
            ],
            [.. Dips(plucked, aperture, highestHz)]
        );

    private static IEnumerable<double> Dips(PluckedString plucked, StringAperture aperture, double highestHz)
    {
        double At(double n) => aperture.Travelling(plucked.RadPerM(n));
        double deep = DeepPart * At(0),
            before = At(0),
            here = At(Step);
        for (double n = Step; plucked.FrequencyHz(n) <= highestHz; n += Step)
        {
            double after = At(n + Step);
            if (here < before && here <= after && here < deep)
            {
                yield return plucked.FrequencyHz(n + Step * Shift(before, here, after));
            }

            (before, here) = (here, after);
        }
    }

    /// <summary>Bottom of a dip in steps from its lowest point, by its two flanks: those of |x − c|, which a zero crossing has.</summary>
    private static double Shift(double before, double here, double after) =>
        before + after > 2 * here ? (before - after) / (before + after) : 0;
}
