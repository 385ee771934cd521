using System.Text.RegularExpressions;

namespace Coilwright.Papers.Help;

/// <summary>Keys of the sources in a text, [GUM] or [Leads, Smythe], and where each is opened.</summary>
public static partial class SourceKeys
{
    private static readonly Dictionary<string, string> s_words = new(StringComparer.Ordinal)
    {
        ["IEC 60028"] = "/help/sources#iec60028",
        ["Neumann's integral"] = "/help/sources#neumann",
        ["docs/theory.md"] = "/help/theory",
        ["docs/evidence.md"] = "/help/evidence",
        ["docs/sources.md"] = "/help/sources",
    };

    private static readonly Lazy<HashSet<string>> s_keys = new(() =>
        [.. Row().Matches(HelpLibrary.Find("sources")!.Markdown).Select(row => row.Groups[1].Value).Except(["Key", "Setting"])]
    );

    /// <summary>Every key that sources state.</summary>
    public static IReadOnlyCollection<string> All => s_keys.Value;

    /// <summary>Names of sources and documents that derivations say in words, with where each is opened.</summary>
    public static IReadOnlyDictionary<string, string> Words => s_words;

    /// <summary>Parts of a text in order, each with the address it opens; null for plain words.</summary>
    public static IEnumerable<(string Text, string? Address)> In(string text)
    {
        int at = 0;
        foreach (Match match in Cited().Matches(text))
        {
            string? address = s_keys.Value.Contains(match.Value) ? AddressOf(match.Value) : s_words.GetValueOrDefault(match.Value);
            if (address is not null)
            {
                yield return (text[at..match.Index], null);
                yield return (match.Value, address);
                at = match.Index + match.Length;
            }
        }

        yield return (text[at..], null);
    }

    /// <summary>The same document with each key it cites made a link to its line in the sources.</summary>
    internal static string Linked(string markdown) =>
        Together().Replace(markdown, match => $"[{match.Value[1..^1].Replace(", ", "] [", StringComparison.Ordinal)}]")
        + "\n\n"
        + string.Concat(s_keys.Value.Select(key => $"[{key}]: sources.md#{HelpAnchors.Of(key)}\n"));

    private static string AddressOf(string key) => "/help/sources#" + HelpAnchors.Of(key);

    [GeneratedRegex(@"^\| ([A-Za-z0-9]+) \|", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"\[[A-Z][A-Za-z0-9]+(?:, [A-Z][A-Za-z0-9]+)+\](?!\()")]
    private static partial Regex Together();

    [GeneratedRegex(@"(?<=\[|, )[A-Z][A-Za-z0-9]+(?=\]|, )|IEC 60028|Neumann's integral|docs/(?:theory|evidence|sources)\.md")]
    private static partial Regex Cited();
}
