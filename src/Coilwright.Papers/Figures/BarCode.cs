using System.Globalization;
using System.Text;

namespace Coilwright.Papers.Figures;

/// <summary>A bar code that readers which type like a keyboard understand: Code 128, set B (ISO/IEC 15417; patterns from memory, read back by an independent decoder).</summary>
public static class BarCode
{
    /// <summary>Longest text, so that a narrowest bar stays printable on a sheet.</summary>
    public const int Longest = 40;

    private const int StartB = 104;

    /// <summary>Widths of bar, space, bar, space, bar, space for each value; the last is the stop pattern with its closing bar.</summary>
    private static readonly string[] s_patterns = (
        "212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231 113222 123122 123221 " +
        "223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321 232121 111323 131123 131321 " +
        "112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 313121 211331 231131 213113 213311 213131 " +
        "311123 311321 331121 312113 312311 332111 314111 221411 431111 111224 111422 121124 121421 141122 141221 112214 112412 122114 " +
        "122411 142112 142211 241211 221114 413111 241112 134111 111242 121142 121241 114212 124112 124211 411212 421112 421211 212141 " +
        "214121 412121 111143 111341 131141 114113 114311 411113 411311 113141 114131 311141 411131 211412 211214 211232 2331112").Split(' ');

    /// <summary>Every pattern, for checks.</summary>
    public static IReadOnlyList<string> Patterns => s_patterns;

    /// <summary>The widths of bars and spaces, a bar first, in modules.</summary>
    /// <param name="text">Letters, digits and signs of ASCII 32…126; others become "-".</param>
    public static string Widths(string text)
    {
        int[] values = [.. text.Take(Longest).Select(letter => (letter is >= ' ' and <= '~' ? letter : '-') - ' ')];
        int check = StartB + values.Select((value, index) => value * (index + 1)).Sum();
        return s_patterns[StartB] + string.Concat(values.Select(value => s_patterns[value])) + s_patterns[check % 103] + s_patterns[^1];
    }

    /// <summary>The code as an SVG element, one unit a module, with the quiet zones the standard asks for.</summary>
    public static string Svg(string text, int heightModules = 40)
    {
        string widths = Widths(text);
        int total = widths.Sum(width => width - '0') + 20, x = 10;
        StringBuilder svg = new();
        svg.Append(string.Create(CultureInfo.InvariantCulture, $"""<svg xmlns="http://www.w3.org/2000/svg" class="barcode" role="img" aria-label="Bar code: {System.Net.WebUtility.HtmlEncode(text)}" viewBox="0 0 {total} {heightModules}" shape-rendering="crispEdges"><path fill="#000" d=""")).Append('"');
        for (int index = 0; index < widths.Length; index++)
        {
            int width = widths[index] - '0';
            if (index % 2 == 0)
            {
                svg.Append(CultureInfo.InvariantCulture, $"M{x} 0h{width}v{heightModules}h-{width}z");
            }

            x += width;
        }

        return svg.Append("\"/></svg>").ToString();
    }
}
