using System.Globalization;
using System.Text;
using ZXing;
using ZXing.Common;
using ZXing.OneD;
using ZXing.QrCode;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Figures;

/// <summary>
/// Codes that readers which type like a keyboard understand: Code 128 (ISO/IEC 15417) and QR (ISO/IEC 18004) [Code128], drawn as SVG. The
/// encoding is the library's, the drawing ours.
/// </summary>
public static class BarCode
{
    /// <summary>Longest text, so that a narrowest bar stays printable on a sheet.</summary>
    public const int Longest = 40;

    /// <summary>Quiet zone that the standard asks for on either side of Code 128, modules.</summary>
    private const int Quiet = 10;

    /// <summary>Quiet zone of a QR code, modules.</summary>
    private const int QuietQr = 4;

    /// <summary>Modules of the Code 128 bars, true for black, without quiet zones.</summary>
    /// <param name="text">Letters, digits and signs of ASCII 32…126; others become "-".</param>
    public static IReadOnlyList<bool> Modules(string text)
    {
        string printable = string.Concat(text.Take(Longest).Select(letter => letter is >= ' ' and <= '~' ? letter : '-'));
        return new Code128Writer().encode(printable.Length == 0 ? "-" : printable);
    }

    /// <summary>The Code 128 bars as an SVG element, one unit a module, with quiet zones.</summary>
    public static string Svg(string text, int heightModules = 40)
    {
        IReadOnlyList<bool> modules = Modules(text);
        StringBuilder svg = Open("barcode", "Bar code: " + text, modules.Count + 2 * Quiet, heightModules);
        for (int start = 0; start < modules.Count; )
        {
            int end = start;
            while (end < modules.Count && modules[end] == modules[start])
            {
                end++;
            }

            if (modules[start])
            {
                svg.Append(CultureInfo.InvariantCulture, $"M{start + Quiet} 0h{end - start}v{heightModules}h-{end - start}z");
            }

            start = end;
        }

        return svg.Append("\"/></svg>").ToString();
    }

    /// <summary>A QR code as an SVG element, one unit a module, with its quiet zone; error correction level M.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="place">Attributes that place it inside another drawing; empty where it stands by itself.</param>
    public static string QrSvg(string text, string place = "")
    {
        BitMatrix matrix = new QRCodeWriter().encode(
            text,
            BarcodeFormat.QR_CODE,
            0,
            0,
            new Dictionary<EncodeHintType, object>
            {
                [EncodeHintType.MARGIN] = QuietQr,
                [EncodeHintType.ERROR_CORRECTION] = ZXing.QrCode.Internal.ErrorCorrectionLevel.M,
            }
        );
        StringBuilder svg = Open("qrcode", "QR code: " + text, matrix.Width, matrix.Height, place);
        for (int y = 0; y < matrix.Height; y++)
        {
            for (int x = 0; x < matrix.Width; x++)
            {
                if (matrix[x, y])
                {
                    svg.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
                }
            }
        }

        return svg.Append("\"/></svg>").ToString();
    }

    private static StringBuilder Open(string className, string label, int width, int height, string place = "") =>
        new StringBuilder().Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"{className}\" {(place.Length > 0 ? place + " " : "")}role=\"img\" "
                + $"aria-label=\"{E(label)}\" viewBox=\"0 0 {width} {height}\" "
                + $"shape-rendering=\"crispEdges\"><path fill=\"#000\" d=\""
        );
}
