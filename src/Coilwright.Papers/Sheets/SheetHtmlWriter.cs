using System.Globalization;
using System.Text;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.SetUp;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Sheets;

/// <summary>Sheets for the screen, with the same parts in the same order and look as the PDF.</summary>
public static class SheetHtmlWriter
{
    private const string Css = """
        .part-large { text-align: center; border-bottom: 1px solid var(--ink); padding: 2mm 0; }
        .part-large .value { font-size: 56px; line-height: 1.15; font-weight: 700; }
        .sheet table { width: 100%; border-collapse: collapse; margin: 1mm 0 3mm; table-layout: fixed; }
        .sheet th { text-align: left; border-bottom: 2px solid var(--ink); font-size: 14px; }
        .sheet td { border-bottom: 1px solid var(--ink); padding: 0.6mm 2mm 0.6mm 0; vertical-align: top; overflow-wrap: anywhere; }
        .sheet h2.part { font-size: 20px; margin: 3mm 0 1mm; color: var(--copper); }
        .sheet figure { margin: 2mm 0; }
        .sheet .figures { display: grid; grid-template-columns: repeat(var(--columns), minmax(0, 1fr)); gap: 1mm 6mm; margin: 1mm 0 2mm; }
        .sheet .figures > div { display: block; border-bottom: 1px solid var(--ink); padding-bottom: 1mm; }
        .sheet .figures dt { font-size: 14px; }
        .sheet .figures dd { font-size: 28px; line-height: 1.15; font-weight: 700; overflow-wrap: anywhere; }
        .sheet .figures dd.long { font-size: 20px; }
        .sheet .figures dd.note { font-size: 14px; font-weight: 400; }
        @media print {
            .sheet .figures { gap: 0.5mm 5mm; margin: 0 0 1mm; }
            .sheet .figures > div { padding-bottom: 0.3mm; }
            .sheet .figures dt { font-size: 9pt; line-height: 1.1; }
            .sheet .figures dd { font-size: 24pt; line-height: 1.1; }
            .sheet .figures.narrow dd { font-size: 20pt; }
            .sheet .figures dd.long { font-size: 14pt; }
            .sheet .figures dd.note { font-size: 8.5pt; }
            .sheet h2.part { font-size: 12pt; margin: 1mm 0 0; }
            .sheet .caution { font-size: 8.5pt; }
        }
        @media screen and (max-width: 640px) {
            .sheet .figures { grid-template-columns: minmax(0, 1fr); }
            .sheet header { flex-wrap: wrap; }
            .sheet header dl { grid-template-columns: auto; }
        }
        """;

    /// <summary>A whole document; needs nothing from outside.</summary>
    public static string Render(IReadOnlyList<Sheet> sheets)
    {
        StringBuilder html = new();
        html.Append(
            "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">"
        );
        string title = sheets.Count > 0 ? $"{sheets[0].Kind}: {sheets[0].Subject}" : "Papers";
        html.Append($"<title>{E(title)}</title><style>{SetUpSheetStyle()}{Css}</style></head><body><main>");
        for (int index = 0; index < sheets.Count; index++)
        {
            Write(html, sheets[index], index);
        }

        return html.Append("</main></body></html>").ToString();
    }

    private static string SetUpSheetStyle() => SetUp.SetUpSheetStyle.Css;

    private static void Write(StringBuilder html, Sheet sheet, int index)
    {
        html.Append(
            $"<article class=\"sheet\" aria-label=\"{E(sheet.Kind)}\"><header><div><h1>{E(sheet.Subject)}</h1><p "
                + $"class=\"coil\">{E(sheet.Kind)}</p></div><dl>"
        );
        foreach ((string term, string meaning) in sheet.Facts)
        {
            html.Append($"<div><dt>{E(term)}</dt><dd>{E(meaning)}</dd></div>");
        }

        html.Append("</dl></header>");
        bool inSteps = false;
        foreach (SheetPart part in sheet.Parts)
        {
            if (part is StepPart != inSteps)
            {
                html.Append(inSteps ? "</ol>" : "<ol class=\"steps\">");
                inSteps = !inSteps;
            }

            Write(html, part, index);
        }

        html.Append(inSteps ? "</ol>" : "");
        html.Append($"<footer><div><p class=\"closing\">{E(Cautions.ClosingLine)}</p><p>{E(sheet.Where)}</p></div>");
        html.Append(sheet.Code.Length > 0 ? BarCode.Svg(sheet.Code) : "").Append("</footer></article>");
    }

    private static void Write(StringBuilder html, SheetPart part, int index)
    {
        switch (part)
        {
            case TitlePart title:
                html.Append($"<h2 class=\"part\">{E(title.Text)}</h2>");
                break;
            case TextPart text:
                html.Append($"<p>{E(text.Text)}</p>");
                break;
            case LargePart large:
                html.Append(
                    $"<section class=\"part-large\"><h2>{E(large.Label)}</h2><p "
                        + $"class=\"value\">{E(large.Value)}</p><p>{E(large.Note)}</p></section>"
                );
                break;
            case FiguresPart figures:
                html.Append(Figures(figures));
                break;
            case CautionPart caution:
                html.Append(Caution(caution.Text));
                break;
            case TablePart table:
                html.Append("<table><thead>")
                    .Append(Row(table.Headings, "th"))
                    .Append("</thead><tbody>")
                    .Append(string.Concat(table.Rows.Select(row => Row(row, "td"))))
                    .Append("</tbody></table>");
                break;
            case StepPart step:
                html.Append($"<li><h2>{E(step.Name)}</h2>")
                    .AppendJoin("", step.Lines.Select(line => $"<p>{E(line)}</p>"))
                    .AppendJoin("", step.Cautions.Select(Caution))
                    .Append("</li>");
                break;
            case CurvePart curve:
                html.Append("<figure>")
                    .Append(ResponseFigure.Svg([(curve.Caption, curve.Curve)], [curve.Peak], "Response", $"response-{index}"))
                    .Append($"<figcaption>{E(curve.Caption)}</figcaption></figure>");
                break;
            default:
                throw new ArgumentException("This part cannot be drawn yet.", nameof(part));
        }
    }

    private static string Figures(FiguresPart part) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"<dl class=\"figures{(part.Columns > 2 ? " narrow" : "")}\" style=\"--columns: "
                + $"{part.Columns}\">{string.Concat(part.Figures.Select(figure => Figure(figure, part.Columns)))}</dl>"
        );

    /// <summary>A value with more letters than a column holds in large type is written smaller, as on the PDF.</summary>
    private static string Figure(KeyFigure figure, int columns)
    {
        string size = figure.Value.Length > 32 / columns ? " class=\"long\"" : "",
            note = figure.Note.Length > 0 ? $"<dd class=\"note\">{E(figure.Note)}</dd>" : "";
        return $"<div><dt>{E(figure.Label)}</dt><dd{size}>{E(figure.Value)}</dd>{note}</div>";
    }

    private static string Caution(string text) => $"<p class=\"caution\" role=\"note\"><strong>Caution</strong> {E(text)}</p>";

    private static string Row(IReadOnlyList<string> cells, string tag) =>
        $"<tr>{string.Concat(cells.Select(cell => $"<{tag}>{E(cell)}</{tag}>"))}</tr>";
}
