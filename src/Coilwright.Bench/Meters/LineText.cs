using System.Text;

namespace Coilwright.Bench.Meters;

/// <summary>Bytes of a line as text: UTF-8 where they are that, otherwise one character a byte, so that nothing is hidden.</summary>
internal static class LineText
{
    private static readonly UTF8Encoding s_strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static string Of(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return s_strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }

    public static byte[] BytesOf(string line, string end) => Encoding.UTF8.GetBytes(line + end);
}
