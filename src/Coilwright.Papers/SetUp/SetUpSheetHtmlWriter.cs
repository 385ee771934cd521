using System.Globalization;
using System.Text;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.SetUp;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.SetUp;

/// <summary>The set-up sheet: one printed page for each coil, read from a metre away at the winder.</summary>
public static class SetUpSheetHtmlWriter
{
    /// <summary>A whole document that prints on A4 or Letter, one page a coil. Needs nothing from outside.</summary>
    /// <param name="setUp">What it says.</param>
    /// <param name="ways">Addresses and names of pages to go on to, shown above the sheet and not printed; null for none.</param>
    public static string Render(WindingSetUp setUp, IReadOnlyList<(string Address, string Name)>? ways = null)
    {
        StringBuilder html = new();
        html.Append(
            "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">"
        );
        string name = setUp.Batch is { } batch ? $"batch {batch.Name}, {setUp.RecipeName}" : setUp.RecipeName;
        html.Append($"<title>Set-up: {E(name)}</title><style>{SetUpSheetStyle.Css}</style></head><body>");
        WriteWays(html, ways ?? []);
        html.Append("<main>");
        html.Append(Pages(setUp));
        return html.Append("</main></body></html>").ToString();
    }

    /// <summary>The sheets alone, for a page that brings its own head and <see cref="SetUpSheetStyle.Css"/>.</summary>
    public static string Pages(WindingSetUp setUp)
    {
        StringBuilder html = new();
        for (int index = 0; index < setUp.Coils.Count; index++)
        {
            WritePage(html, setUp, setUp.Coils[index], index + 1);
        }

        return html.ToString();
    }

    private static void WriteWays(StringBuilder html, IReadOnlyList<(string Address, string Name)> ways)
    {
        if (ways.Count > 0)
        {
            html.Append("<nav class=\"ways\" aria-label=\"To the pages\">");
            html.Append(string.Concat(ways.Select(way => $"<a href=\"{E(way.Address)}\">{E(way.Name)}</a>")));
            html.Append("</nav>");
        }
    }

    private static void WritePage(StringBuilder html, WindingSetUp setUp, CoilSetUp coil, int page)
    {
        html.Append($"<article class=\"sheet\" aria-label=\"Set-up of coil {E(coil.Name)}\">");
        WriteHeading(html, setUp, coil, page);
        WriteLargest(html, setUp, coil);
        if (setUp.Phase is { IsRed: true } phase)
        {
            html.Append(
                $"<p class=\"caution\"><strong>Stop:</strong> {E(phase.Warnings[0].Message)} ({E(phase.Warnings[0].Understood ?? "")}).</p>"
            );
        }

        html.Append("<ol class=\"steps\">");
        foreach (SetUpStep step in SetUpSteps.Of(setUp, coil))
        {
            WriteStep(html, step);
        }

        html.Append("</ol>");
        if (!setUp.OnlyWhatIsSet)
        {
            WriteBreak(html, coil);
        }

        html.Append(
            $"<footer><div><p class=\"closing\">{E(Cautions.ClosingLine)}</p><p>{E(Where(setUp))}, page {page} of "
                + $"{setUp.Coils.Count}</p></div>{BarCode.Svg(SetUpHead.Code(setUp, coil))}</footer></article>"
        );
    }

    private static void WriteHeading(StringBuilder html, WindingSetUp setUp, CoilSetUp coil, int page)
    {
        SheetHeading heading = setUp.Heading;
        html.Append($"<header><div><h1>{E(setUp.RecipeName)}</h1><p class=\"coil\">Coil <strong>{E(coil.Name)}</strong></p></div><dl>");
        if (setUp.Batch is { } batch)
        {
            Term(html, "Batch", batch.Name);
            Term(html, "Coils", batch.CoilsWords);
        }

        Term(html, "Revision", heading.Revision.Length > 0 ? heading.Revision : "not released");
        Term(html, "Shop", heading.Shop.Length > 0 ? heading.Shop : "–");
        Term(html, "Date", heading.Date is { } date ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "–");
        Term(html, "Page", string.Create(CultureInfo.InvariantCulture, $"{page} of {setUp.Coils.Count}"));
        html.Append("</dl></header>");
    }

    private static void WriteLargest(StringBuilder html, WindingSetUp setUp, CoilSetUp coil)
    {
        if (setUp.IsForNoWinder)
        {
            html.Append($"<p class=\"no-winder\"><strong>Note</strong> {E(WindingSetUp.ForNoWinderWords)}</p>");
        }

        html.Append("<section class=\"largest\">");
        WriteLarge(html, "stop", SetUpHead.Stop(setUp, coil));
        if (!setUp.OnlyWhatIsSet)
        {
            WriteLarge(html, "meter", SetUpHead.Meter(setUp, coil));
        }

        html.Append("</section>");
    }

    private static void WriteLarge(StringBuilder html, string kind, (string Label, string Value, string Note) figure) =>
        html.Append($"<div><h2>{E(figure.Label)}</h2><p class=\"{kind}\">{E(figure.Value)}</p><p>{E(figure.Note)}</p></div>");

    private static void WriteStep(StringBuilder html, SetUpStep step)
    {
        html.Append($"<li><h2>{E(step.Name)}</h2>");
        WriteTerms(html, "<dl class=\"pairs\">", step.Pairs);
        WriteTerms(html, "<dl>", step.Terms);
        if (step.Caution.Length > 0)
        {
            html.Append($"<p class=\"caution\" role=\"note\"><strong>Caution</strong> {E(step.Caution)}</p>");
        }

        html.Append("</li>");
    }

    private static void WriteTerms(StringBuilder html, string open, IReadOnlyList<(string Term, string Meaning)> terms)
    {
        if (terms.Count > 0)
        {
            html.Append(open);
            foreach ((string term, string meaning) in terms)
            {
                Term(html, term, meaning);
            }

            html.Append("</dl>");
        }
    }

    private static void WriteBreak(StringBuilder html, CoilSetUp coil)
    {
        (string heading, IReadOnlyList<string> choices) = SetUpSteps.Break(coil);
        html.Append($"<section class=\"break\"><p><strong>If the wire breaks</strong>{E(heading)}</p><ul>");
        foreach (string choice in choices)
        {
            html.Append($"<li>{E(choice)}</li>");
        }

        html.Append("</ul></section>");
    }

    private static string Where(WindingSetUp setUp) =>
        (setUp.Batch is { } batch ? $"Batch {batch.Name}, " : "")
        + setUp.RecipeName
        + (setUp.Heading.Revision.Length > 0 ? ", revision " + setUp.Heading.Revision : "")
        + (setUp.Heading.Shop.Length > 0 ? ", " + setUp.Heading.Shop : "");

    private static void Term(StringBuilder html, string term, string meaning) =>
        html.Append($"<div><dt>{E(term)}</dt><dd>{E(meaning)}</dd></div>");
}
