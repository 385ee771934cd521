using Markdig.Extensions.Tables;
using Markdig.Renderers.Html;
using Markdig.Syntax;

namespace Coilwright.Papers.Help;

/// <summary>Finds where words stand in help, guides before what lies behind them.</summary>
public static class HelpFinder
{
    /// <summary>More are no help.</summary>
    private const int Most = 40;

    /// <summary>How many letters of a place are shown on either side of the word.</summary>
    private const int Beside = 110;

    private sealed record Passage(HelpPage Page, string Anchor, string Words);

    private static readonly Lazy<Passage[]> s_passages = new(() => [.. HelpLibrary.All.SelectMany(Passages)]);

    /// <summary>Paragraphs, steps and rows that hold every one of the words, capitals or not; none for no word.</summary>
    public static IReadOnlyList<HelpHit> Find(string asked)
    {
        string[] words = asked.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0
            ? []
            : [.. s_passages.Value.Where(passage => words.All(word => Holds(passage, word))).Take(Most).Select(one => Hit(one, words[0]))];
    }

    private static bool Holds(Passage passage, string word) => passage.Words.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static HelpHit Hit(Passage passage, string word)
    {
        int at = passage.Words.IndexOf(word, StringComparison.OrdinalIgnoreCase);
        string shown = About(passage.Words, at, at + word.Length);
        return new HelpHit(passage.Page, passage.Page.Address + (passage.Anchor.Length > 0 ? "#" + passage.Anchor : ""), shown);
    }

    /// <summary>Whole words on either side of a place.</summary>
    private static string About(string text, int from, int to)
    {
        int first = from <= Beside ? 0 : text.IndexOf(' ', from - Beside) + 1,
            last = to + Beside >= text.Length ? text.Length : text.LastIndexOf(' ', to + Beside);
        (first, last) = (Math.Min(first, from), Math.Max(last, to));
        return (first > 0 ? "…" : "") + text[first..last] + (last < text.Length ? "…" : "");
    }

    private static IEnumerable<Passage> Passages(HelpPage page)
    {
        string anchor = "";
        foreach (Block block in HelpHtmlWriter.Read(page.Markdown).Descendants<Block>())
        {
            anchor = block.TryGetAttributes()?.Id ?? anchor;
            string? words = block switch
            {
                TableRow row => string.Join(" · ", row.Select(HelpAnchors.Words)),
                LeafBlock { Inline: not null, Parent: not TableCell } leaf => HelpAnchors.Words(leaf),
                _ => null,
            };
            if (words is not null)
            {
                yield return new Passage(page, anchor, words);
            }
        }
    }
}
