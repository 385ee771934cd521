using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Physics.Wire;

/// <summary>A bare diameter as people say it when they mean a size of wire.</summary>
/// <param name="DiameterM">Diameter of the copper, m.</param>
/// <param name="Inches">True when it was said in inches or thousandths of one.</param>
internal readonly partial record struct WireDiameter(double DiameterM, bool Inches)
{
    /// <summary>How far a diameter said in inches may lie from the size that is meant: half sizes are 6 % apart.</summary>
    public const double WithinInches = 0.025;

    /// <summary>The same for a metric diameter, which must be written out: 0.0635 mm is AWG 42, 0.064 mm is nothing.</summary>
    public const double WithinMetric = 0.002;

    /// <summary>Reads "2.5 thou", ".0025\"", "63 µm", "0,0635 mm"; null when it is none of these.</summary>
    public static WireDiameter? Parse(string? typed)
    {
        Match match = Form().Match((typed ?? "").Trim());
        if (
            !match.Success
            || !double.TryParse(
                match.Groups[1].Value.Replace(',', '.'),
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out double number
            )
            || !(number > 0)
        )
        {
            return null;
        }

        return match.Groups[2].Value.ToLowerInvariant() switch
        {
            "mm" => new WireDiameter(number * 1e-3, false),
            "µm" or "μm" or "um" or "micron" or "microns" => new WireDiameter(number * 1e-6, false),
            "thou" or "mil" or "mils" => new WireDiameter(number * 25.4e-6, true),
            _ => new WireDiameter(number * 25.4e-3, true),
        };
    }

    [GeneratedRegex(
        @"^([0-9]*[.,]?[0-9]+)\s*(mm|[µμu]m|microns?|thou|mils?|inch|in|""|″|'')\.?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant
    )]
    private static partial Regex Form();
}
