using System.Text;
using Coilwright.Papers.Figures;
using Coilwright.Workshop.Batches;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Tags;

/// <summary>
/// Tags of a batch to print and cut: the tag in letters, as Code 128 and as QR. Both say batch and tag, as a reader types it.
/// </summary>
public static class TagSheetHtmlWriter
{
    /// <summary>Style of the sheet; needs nothing from outside.</summary>
    public const string Css = """
        @page { size: auto; margin: 10mm; }
        body { margin: 0; font: 14px/1.2 system-ui, "DejaVu Sans", sans-serif; color: #000; background: #fff; }
        h1 { font-size: 20px; margin: 4mm; }
        ul { list-style: none; margin: 0; padding: 0; display: grid; grid-template-columns: repeat(3, 1fr); gap: 0; }
        li {
            box-sizing: border-box; border: 1px dashed #777; padding: 2mm; height: 32mm; display: grid;
            grid-template-columns: 1fr 22mm; gap: 1mm 2mm; align-items: center; break-inside: avoid;
            overflow: hidden;
        }
        strong { font-size: 24px; font-variant-numeric: tabular-nums; }
        .barcode { grid-column: 1; width: 100%; height: 12mm; }
        .qrcode { grid-column: 2; grid-row: 1 / span 2; width: 22mm; height: 22mm; }
        """;

    /// <summary>A whole document.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="first">Number of the first tag, from 1.</param>
    /// <param name="count">How many.</param>
    public static string Render(BatchRecord batch, int first, int count)
    {
        StringBuilder html = new();
        html.Append(
            $"<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
                + $"content=\"width=device-width\"><title>Tags of batch "
                + $"{E(batch.Name)}</title><style>{Css}</style></head><body><main><h1>Batch {E(batch.Name)}: tags</h1><ul>"
        );
        foreach (int number in Enumerable.Range(first, count))
        {
            string tag = BatchTags.Of(batch, number),
                code = BatchTags.CodeOf(batch, tag);
            html.Append($"<li><strong>{E(tag)}</strong>{BarCode.Svg(code, 24)}{BarCode.QrSvg(code)}</li>");
        }

        return html.Append("</ul></main></body></html>").ToString();
    }
}
