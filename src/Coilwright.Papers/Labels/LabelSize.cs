using System.Globalization;
using System.Text.RegularExpressions;

namespace Coilwright.Papers.Labels;

/// <summary>A label as a label printer takes it, one after another on a roll.</summary>
/// <param name="WidthMm">Across the roll, mm, 20 to 150.</param>
/// <param name="HeightMm">Along the roll, mm, 20 to 150.</param>
public readonly partial record struct LabelSize(double WidthMm, double HeightMm)
{
    private const double Least = 20,
        Largest = 150;

    /// <summary>What a label may measure, for people.</summary>
    public const string Allowed = "width × height, each 20 to 150 mm, for example 62x29";

    /// <summary>Sizes that are offered; common practice, no source.</summary>
    public static IReadOnlyList<LabelSize> Usual { get; } = [new(62, 29), new(50, 25), new(25, 25), new(100, 50)];

    /// <summary>As it is typed in an option or an address: 62x29.</summary>
    public string Key => string.Create(CultureInfo.InvariantCulture, $"{WidthMm:0.#}x{HeightMm:0.#}");

    /// <summary>As it is read: 62 × 29 mm.</summary>
    public string Words => string.Create(CultureInfo.InvariantCulture, $"{WidthMm:0.#} × {HeightMm:0.#} mm");

    /// <summary>Reads "62x29", "62 × 29 mm" or "62 mm x 29 mm"; false for anything else and for what no label measures.</summary>
    public static bool TryParse(string text, out LabelSize size)
    {
        Match typed = Typed().Match(text.Trim());
        size = typed.Success ? new LabelSize(Number(typed.Groups[1]), Number(typed.Groups[2])) : default;
        return size is { WidthMm: >= Least and <= Largest, HeightMm: >= Least and <= Largest };
    }

    private static double Number(Group group) => double.Parse(group.Value.Replace(',', '.'), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(\d{1,3}(?:[.,]\d)?)\s*(?:mm)?\s*[x×*]\s*(\d{1,3}(?:[.,]\d)?)\s*(?:mm)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Typed();
}
