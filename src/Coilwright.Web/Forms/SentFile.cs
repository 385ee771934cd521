using System.Text;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>A file that was sent with a form.</summary>
internal static class SentFile
{
    /// <summary>All of it as text; a mark of the byte order at its beginning is left out.</summary>
    public static async Task<string> TextAsync(IFormFile file, CancellationToken cancel)
    {
        using StreamReader reader = new(file.OpenReadStream(), Encoding.UTF8);
        return await reader.ReadToEndAsync(cancel);
    }

    /// <summary>All of it.</summary>
    public static async Task<byte[]> BytesAsync(IFormFile file, CancellationToken cancel)
    {
        using MemoryStream bytes = new((int)file.Length);
        await file.CopyToAsync(bytes, cancel);
        return bytes.ToArray();
    }
}
