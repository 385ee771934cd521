using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace Coilwright.Papers;

/// <summary>Small things every paper needs to write markup safely.</summary>
internal static class Markup
{
    private static readonly HtmlEncoder s_encoder = HtmlEncoder.Create(UnicodeRanges.All);

    /// <summary>Text made safe for markup; Greek letters and symbols stay as they are.</summary>
    public static string E(string text) => s_encoder.Encode(text);
}
