using System.Text;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.SetUp;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Labels;

/// <summary>Tags of baskets and mixes for the screen, with the same words as the PDF.</summary>
public static class ProcessTagHtmlWriter
{
    private const string Css = """
        @page { size: auto; margin: 10mm; }
        body {
            margin: 0; font: 14px/1.25 system-ui, "DejaVu Sans", sans-serif; color: #000; background: #fff;
            font-variant-numeric: tabular-nums;
        }
        ul {
            list-style: none; margin: 0; padding: 0; display: grid;
            grid-template-columns: repeat(auto-fill, minmax(min(100%, 88mm), 1fr)); gap: 2mm;
        }
        li {
            box-sizing: border-box; border: 1px solid #000; padding: 3mm; break-inside: avoid; display: grid;
            grid-template-columns: minmax(0, 1fr) 24mm; align-content: start; overflow-wrap: anywhere;
        }
        h2 { font-size: 20px; margin: 0; }
        p { margin: 0; }
        .key { font-size: 20px; font-weight: 700; }
        .qrcode { grid-column: 2; grid-row: 1 / span 4; width: 24mm; height: 24mm; }
        dl, .caution, .closing { grid-column: 1 / -1; }
        dl { margin: 1mm 0; display: grid; grid-template-columns: auto 1fr; gap: 0 3mm; }
        dd { margin: 0; font-weight: 600; }
        .caution { border: 2px solid #000; border-left-width: 8px; padding: 1mm 2mm; }
        .closing { margin-top: 1mm; }
        """;

    /// <summary>A whole document; needs nothing from outside.</summary>
    public static string Render(IReadOnlyList<ProcessTag> tags)
    {
        StringBuilder html = new();
        html.Append(
            $"<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
                + $"content=\"width=device-width\"><title>Tags</title><style>{Css}</style></head><body><main><ul>"
        );
        foreach (ProcessTag tag in tags)
        {
            html.Append(
                $"<li><p>{E(tag.Kind)}</p>{BarCode.QrSvg(tag.Code)}<h2>{E(tag.Title)}</h2><p>{E(tag.Key.Term)}</p><p "
                    + $"class=\"key\">{E(tag.Key.Meaning)}</p><dl>"
            );
            html.Append(string.Concat(tag.Facts.Select(fact => $"<dt>{E(fact.Term)}</dt><dd>{E(fact.Meaning)}</dd>")));
            html.Append(
                $"</dl><p class=\"caution\" role=\"note\"><strong>CAUTION</strong> {E(tag.Caution)}</p><p "
                    + $"class=\"closing\">{E(Cautions.ClosingLine)}</p></li>"
            );
        }

        return html.Append("</ul></main></body></html>").ToString();
    }
}
