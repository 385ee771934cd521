using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Coilwright.Papers.Help;

/// <summary>
/// Links of a document, made to lead to where the program shows the same. What it does not carry, and every address outside, stays as words
/// to be read: nothing outside the machine is ever asked for.
/// </summary>
internal static class HelpLinks
{
    public static void Rewrite(MarkdownDocument document)
    {
        foreach (Inline link in document.Descendants<Inline>().Where(one => one is LinkInline or AutolinkInline).ToArray())
        {
            if (link is LinkInline { IsImage: false, Url: { } url } inner && Inside(url) is { } address)
            {
                inner.Url = address;
            }
            else
            {
                link.ReplaceBy(new LiteralInline(Said(link)), copyChildren: false);
            }
        }
    }

    /// <summary>The address inside the program of a link between documents; null where it leads to none of ours.</summary>
    public static string? Inside(string url)
    {
        if (url.StartsWith('#'))
        {
            return url;
        }

        string[] parts = url.Split('#', 2);
        string name = Path.GetFileNameWithoutExtension(parts[0]);
        bool ours =
            !url.Contains(':', StringComparison.Ordinal)
            && !parts[0].StartsWith("//", StringComparison.Ordinal)
            && parts[0].EndsWith(".md", StringComparison.Ordinal)
            && !parts[0].Contains("formats/", StringComparison.Ordinal)
            && HelpLibrary.Find(name) is not null;
        string anchor = parts.Length > 1 ? "#" + parts[1] : "";
        return ours ? $"/help/{name}{anchor}" : null;
    }

    private static string Said(Inline link) =>
        link switch
        {
            AutolinkInline bare => bare.Url,
            LinkInline { Url: { } url } inner when url.Contains("://", StringComparison.Ordinal) => $"{HelpAnchors.Words(inner)} ({url})",
            _ => HelpAnchors.Words(link),
        };
}
