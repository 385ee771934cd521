using System.Globalization;
using System.Text;

namespace Coilwright.Workshop.Recipes.Reading;

/// <summary>
/// Says in workshop words where a file stops making sense and what is probably wrong there; the words of the library that reads it never
/// reach a person.
/// </summary>
internal static class BrokenJson
{
    /// <summary>What is wrong at a place.</summary>
    /// <param name="text">The whole file.</param>
    /// <param name="line">Line, from 0.</param>
    /// <param name="bytesInLine">Bytes before the place in its line.</param>
    public static string Describe(string text, long line, long bytesInLine)
    {
        int at = PlaceOf(text, line, bytesInLine),
            start = at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;
        string place = string.Create(CultureInfo.InvariantCulture, $"line {line + 1}, place {at - start + 1}");
        if (text.Trim().Length == 0)
        {
            return "the file is empty";
        }

        string rest = text[at..].TrimStart();
        return rest.Length == 0
            ? $"the file ends too early, at {place}: a brace, bracket or quote is not closed"
            : $"this cannot be read at {place}: {Reason(rest, text[..at].TrimEnd())}";
    }

    private static string Reason(string rest, string before) =>
        rest[0] switch
        {
            '}' or ']' when before.EndsWith(',') => $"there is a comma too many before \"{rest[0]}\"",
            '}' or ']' => $"\"{rest[0]}\" closes what was not opened, or a value is missing before it",
            '\'' or '“' or '”' or '„' or '‘' or '’' => "names and texts stand in straight double quotes",
            '/' or '#' => "remarks cannot stand here; put them into the field \"notes\"",
            '"' when before.Length > 0 && (char.IsLetterOrDigit(before[^1]) || before[^1] is '"' or '}' or ']') =>
                "a comma is missing before it",
            ',' => "there is a comma too many, or a value is missing before it",
            '\n' or '\r' or '\t' => "a text goes over the end of its line; close its quote",
            '{' or '[' when Depth(before) >= 32 => "too many groups stand inside each other, at most 32 do",
            _ => $"\"{Shown(rest)}\" does not belong here",
        };

    private static string Shown(string rest)
    {
        string word = rest.Split([' ', '\r', '\n', '\t', ',', '}', ']'], 2)[0];
        return word.Length is > 0 and <= 20 ? word : rest[..1];
    }

    private static int Depth(string before) => before.Count(letter => letter is '{' or '[') - before.Count(letter => letter is '}' or ']');

    private static int PlaceOf(string text, long line, long bytesInLine)
    {
        int at = 0;
        for (long skipped = 0; skipped < line; skipped++)
        {
            int end = text.IndexOf('\n', at);
            if (end < 0)
            {
                return text.Length;
            }

            at = end + 1;
        }

        long bytes = 0;
        while (at < text.Length && bytes < bytesInLine)
        {
            bool pair = char.IsHighSurrogate(text[at]) && at + 1 < text.Length;
            bytes += pair ? 4 : Encoding.UTF8.GetByteCount(text.AsSpan(at, 1));
            at += pair ? 2 : 1;
        }

        return Math.Min(at, text.Length);
    }
}
