using System.Text.Encodings.Web;
using System.Text.Json;

namespace Coilwright.Formats.Records;

/// <summary>Lists for programs: plain objects as indented JSON.</summary>
public static class JsonListWriter
{
    private static readonly JsonSerializerOptions s_options = new()
    {
        WriteIndented = true,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(object value) => JsonSerializer.Serialize(value, s_options);
}
