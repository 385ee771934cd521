using System.Globalization;
using System.Runtime.CompilerServices;

namespace Coilwright.Papers;

/// <summary>Text with numbers written the same in every culture. Unlike a formattable string it may be a sum of several literals.</summary>
[InterpolatedStringHandler]
public ref struct InvariantText
{
    private DefaultInterpolatedStringHandler _text;

    /// <param name="literalLength">Characters outside the holes.</param>
    /// <param name="formattedCount">Holes.</param>
    public InvariantText(int literalLength, int formattedCount) =>
        _text = new DefaultInterpolatedStringHandler(literalLength, formattedCount, CultureInfo.InvariantCulture);

    /// <summary>Takes the text between two holes.</summary>
    public void AppendLiteral(string value) => _text.AppendLiteral(value);

    /// <summary>Takes the value of a hole.</summary>
    public void AppendFormatted<T>(T value) => _text.AppendFormatted(value);

    /// <summary>Takes the value of a hole with its format.</summary>
    public void AppendFormatted<T>(T value, string? format) => _text.AppendFormatted(value, format);

    /// <summary>The whole text; to be asked for once.</summary>
    public string ToText() => _text.ToStringAndClear();
}
