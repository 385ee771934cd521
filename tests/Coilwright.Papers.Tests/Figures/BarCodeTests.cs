using System.Text.RegularExpressions;
using Coilwright.Papers.Figures;

namespace Coilwright.Papers.Tests.Figures;

public sealed partial class BarCodeTests
{
    private static readonly Dictionary<string, int> s_values = File.ReadLines(
            Path.Combine(AppContext.BaseDirectory, "Reference", "identification", "code128.csv")
        )
        .Skip(2)
        .Select(line => line.Split(','))
        .ToDictionary(cells => cells[1], cells => int.Parse(cells[0], System.Globalization.CultureInfo.InvariantCulture));

    /// <summary>Whatever is encoded consists of the standard's symbols, ends with the stop, and carries the weighted sum mod 103.</summary>
    [Theory]
    [InlineData("C-014")]
    [InlineData("H-12/C-014")]
    [InlineData("HARBOUR BRIDGE/C/MAIN")]
    [InlineData("345678")]
    [InlineData("abcdef")]
    public void Every_code_is_made_of_the_standards_symbols_with_a_right_check(string text)
    {
        int[] values = Values(text);
        int sum = values[0] + values.Skip(1).SkipLast(2).Select((value, index) => value * (index + 1)).Sum();

        Assert.InRange(values[0], 103, 105); // a start
        Assert.Equal(106, values[^1]); // the stop
        Assert.Equal(sum % 103, values[^2]);
    }

    /// <summary>Published worked examples [Code128Check]: abcdef in set B carries 97, 345678 in set C 73.</summary>
    [Theory]
    [InlineData("abcdef", 104, 97)]
    [InlineData("345678", 105, 73)]
    public void The_check_character_is_that_of_published_examples(string text, int start, int check)
    {
        int[] values = Values(text);

        Evidence
            .Outside(
                $"Code 128 start and check character of {text}",
                "worked example at barcoderesource.com [Code128Check]",
                "read",
                "exact"
            )
            .Same(values[0], start)
            .Same(values[^2], check)
            .Record();
    }

    [Fact]
    public void The_drawing_has_ten_modules_of_quiet_on_either_side() =>
        Assert.Contains($"viewBox=\"0 0 {BarCode.Modules("ABC").Count + 20} 40\"", BarCode.Svg("ABC"), StringComparison.Ordinal);

    /// <summary>
    /// The longest text a version holds fits in it, and one more character takes the next: 17 + 4 · version modules a side.
    /// </summary>
    [Fact]
    public void A_qr_code_is_as_large_as_its_text_needs()
    {
        Evidence evidence = Evidence.Outside(
            "QR: modules a side and alphanumeric capacity, versions 1–10, level M",
            "block structure of ISO/IEC 18004 in nayuki/QR-Code-generator: tests/Reference/identification/qr.csv [Code128]",
            "read",
            "exact"
        );
        foreach (
            string[] cells in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "identification", "qr.csv"))
                .Skip(2)
                .Select(line => line.Split(','))
        )
        {
            int side = Number(cells[1]),
                most = Number(cells[2]);
            Assert.Equal(side, 17 + 4 * Number(cells[0]));
            evidence.Same(Side(new string('A', most)), side, cells[0]).Same(Side(new string('A', most + 1)), side + 4, cells[0]);
        }

        evidence.Record();
    }

    private static int Side(string text) => Number(ViewBox().Match(BarCode.QrSvg(text)).Groups[1].Value) - 8;

    private static int Number(string text) => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static int[] Values(string text)
    {
        string modules = string.Concat(BarCode.Modules(text).Select(black => black ? '1' : '0'));
        return
        [
            .. Enumerable.Range(0, (modules.Length - 13) / 11).Select(at => s_values[modules.Substring(11 * at, 11)]),
            s_values[modules[^13..]],
        ];
    }

    [GeneratedRegex("viewBox=\"0 0 (\\d+) ")]
    private static partial Regex ViewBox();
}
