namespace Coilwright.Papers.Sheets;

/// <summary>Sizes that sheets are printed on.</summary>
public enum PaperSize
{
    /// <summary>210 × 297 mm.</summary>
    A4,

    /// <summary>8.5 × 11 in.</summary>
    Letter,
}
