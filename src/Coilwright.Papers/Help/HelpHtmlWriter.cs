using Markdig;
using Markdig.Extensions.Tables;
using Markdig.Parsers;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Coilwright.Papers.Help;

/// <summary>
/// A document of help as a part of a page: headings, steps and rows with anchors, links that lead inside, no markup of its own.
/// </summary>
public static class HelpHtmlWriter
{
    private static readonly MarkdownPipeline s_pipeline = Pipeline();

    /// <summary>The markup of a page.</summary>
    public static string Render(HelpPage page) => Render(page.Markdown);

    /// <summary>The markup of a text; tags in it are shown as they are typed.</summary>
    public static string Render(string markdown)
    {
        MarkdownDocument document = Read(markdown);
        foreach (QuoteBlock quote in document.Descendants<QuoteBlock>())
        {
            quote.GetAttributes().AddClass("caution");
        }

        using StringWriter text = new();
        HtmlRenderer html = new(text);
        s_pipeline.Setup(html);
        html.ObjectRenderers.Replace<HtmlTableRenderer>(new ScrolledTable());
        html.Render(document);
        return text.ToString();
    }

    /// <summary>Headings of the second rank, with their anchors.</summary>
    public static IReadOnlyList<(string Anchor, string Words)> Sections(HelpPage page) =>
        [
            .. Read(page.Markdown)
                .Descendants<HeadingBlock>()
                .Where(heading => heading.Level == 2)
                .Select(heading => (heading.GetAttributes().Id ?? "", HelpAnchors.Words(heading))),
        ];

    /// <summary>The document with its anchors and links.</summary>
    internal static MarkdownDocument Read(string markdown)
    {
        MarkdownDocument document = Markdown.Parse(SourceKeys.Linked(markdown), s_pipeline);
        HelpAnchors.Give(document);
        HelpLinks.Rewrite(document);
        foreach (HtmlInline tag in document.Descendants<HtmlInline>().ToArray())
        {
            tag.ReplaceBy(new LiteralInline(tag.Tag));
        }

        return document;
    }

    private static MarkdownPipeline Pipeline()
    {
        MarkdownPipelineBuilder builder = new MarkdownPipelineBuilder().UsePipeTables();
        builder.BlockParsers.TryRemove<HtmlBlockParser>();
        return builder.Build();
    }

    /// <summary>A table that is wider than its page is moved sideways by itself, also by keyboard.</summary>
    private sealed class ScrolledTable : HtmlTableRenderer
    {
        protected override void Write(HtmlRenderer renderer, Table table)
        {
            renderer.Write("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Table\">");
            base.Write(renderer, table);
            renderer.Write("</div>");
        }
    }
}
