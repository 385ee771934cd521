namespace Coilwright.Papers.Labels;

/// <summary>A line made shorter word by word, the longest first, each shortened one ending in a full stop: "Breakw. twin C".</summary>
public static class ShortWords
{
    private const int LeastLetters = 3;

    /// <summary>The text, or the longest short form of it that fits; empty where not even the shortest does.</summary>
    /// <param name="text">What to say.</param>
    /// <param name="fits">Whether a text fits.</param>
    public static string Fit(string text, Func<string, bool> fits)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        while (!fits(string.Join(' ', words)))
        {
            if (Longest(words) is { } at)
            {
                words[at] = Shorter(words[at]);
            }
            else if (words.Length > 1)
            {
                words = [.. words[..^2], words[^2].TrimEnd('…') + "…"];
            }
            else
            {
                return "";
            }
        }

        return string.Join(' ', words);
    }

    /// <summary>The word with most letters among those that may still lose one; words with figures stay whole.</summary>
    private static int? Longest(string[] words)
    {
        int[] may = [.. Enumerable.Range(0, words.Length).Where(at => MayLose(words[at]))];
        return may.Length == 0 ? null : may.MaxBy(at => words[at].Length);
    }

    private static bool MayLose(string word)
    {
        string bare = word.TrimEnd('.', ',', '…');
        return bare.Length > LeastLetters + 1 && bare.All(char.IsLetter);
    }

    private static string Shorter(string word)
    {
        string end = word.EndsWith(',') ? "," : "",
            bare = word.TrimEnd('.', ',');
        bool isShortened = word.TrimEnd(',').EndsWith('.');
        return bare[..^(isShortened ? 1 : 2)] + "." + end;
    }
}
