using System.Text.RegularExpressions;
using Markdig.Extensions.Tables;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Coilwright.Papers.Help;

/// <summary>
/// Where a page of help can be opened: at its headings, at a step or a paragraph that begins with words in bold, at a row of a table by its
/// first cell.
/// </summary>
internal static partial class HelpAnchors
{
    /// <summary>The anchor of some words: "What may move?" is "what-may-move".</summary>
    public static string Of(string words) => NoLetter().Replace(words.ToLowerInvariant(), "-").Trim('-');

    /// <summary>
    /// Gives each block that can be opened its anchor, the first of equal ones alone; anchors that the text states go first.
    /// </summary>
    public static void Give(MarkdownDocument document)
    {
        HashSet<string> given = new(StringComparer.Ordinal);
        foreach (MarkdownObject block in document.Descendants())
        {
            if ((Stated(block) ?? Named(block)) is { Length: > 0 } anchor && given.Add(anchor))
            {
                block.GetAttributes().Id = anchor;
            }
        }
    }

    /// <summary>Plain words of a block or a part of a line.</summary>
    public static string Words(MarkdownObject part) =>
        string.Concat(
            (part is LeafBlock { Inline: { } line } ? line : part)
                .Descendants()
                .Select(one =>
                    one switch
                    {
                        LiteralInline literal => literal.Content.ToString(),
                        CodeInline code => code.Content,
                        LineBreakInline => " ",
                        _ => "",
                    }
                )
        );

    private static string? Named(MarkdownObject block) =>
        block switch
        {
            HeadingBlock heading => Of(Words(heading)),
            ListItemBlock { Count: > 0 } item when Bold(item[0]) is { } bold => Of(Words(bold)),
            ParagraphBlock { Parent: MarkdownDocument } when Bold(block) is { } bold => Of(Words(bold)),
            TableRow { IsHeader: false } row when row.Count > 0 => Of(Words(row[0])),
            _ => null,
        };

    /// <summary>What a row of the evidence calls itself, <c>&lt;a id="rods-fast"&gt;&lt;/a&gt;</c>; the tags go out of the text.</summary>
    private static string? Stated(MarkdownObject block)
    {
        if (block is not TableRow row)
        {
            return null;
        }

        string? found = null;
        foreach (HtmlInline tag in row.Descendants<HtmlInline>().ToArray())
        {
            if (Anchor().Match(tag.Tag) is { Success: true } named)
            {
                found = named.Groups[1].Value;
                (tag.NextSibling as HtmlInline)?.Remove();
                tag.Remove();
            }
        }

        return found;
    }

    private static EmphasisInline? Bold(MarkdownObject block) =>
        block is ParagraphBlock { Inline.FirstChild: EmphasisInline { DelimiterCount: 2 } bold } ? bold : null;

    [GeneratedRegex("[^\\p{L}\\p{N}]+")]
    private static partial Regex NoLetter();

    [GeneratedRegex("^<a id=\"([A-Za-z0-9.-]+)\">$")]
    private static partial Regex Anchor();
}
