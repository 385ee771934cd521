using PdfSharp.Fonts;

namespace Coilwright.Papers.Pdf;

/// <summary>
/// The fonts that travel with the program (DejaVu Sans; its free licence stands beside the files), so that a paper looks alike everywhere
/// and needs no network.
/// </summary>
internal sealed class OwnFonts : IFontResolver
{
    public const string Family = "DejaVu Sans";

    private static readonly Lock s_once = new();

    /// <summary>Makes the library use these fonts; may be called as often as one likes.</summary>
    public static void Use()
    {
        lock (s_once)
        {
            GlobalFontSettings.FontResolver ??= new OwnFonts();
        }
    }

    public FontResolverInfo ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        new(isBold ? "DejaVuSans-Bold" : "DejaVuSans");

    public byte[] GetFont(string faceName)
    {
        using Stream stream = typeof(OwnFonts).Assembly.GetManifestResourceStream($"Coilwright.Papers.Fonts.{faceName}.ttf")
            ?? throw new InvalidOperationException($"The font {faceName} is missing from the assembly.");
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
