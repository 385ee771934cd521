using System.Globalization;
using System.Text;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Pdf;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.Labels;

/// <summary>The same labels as drawings, and as a document that prints one a page.</summary>
public static class PrinterLabelSvg
{
    /// <summary>One label, in its own size; each line keeps the width it was laid out with, whatever font the reader has.</summary>
    public static string Of(PieceLabel label, LabelSize size)
    {
        LabelLayout layout = LabelLayout.Of(label, size);
        StringBuilder svg = new();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"label\" role=\"img\" aria-label=\"Label {E(label.Title)}, {size.Words}\" "
                + $"width=\"{size.WidthMm}mm\" height=\"{size.HeightMm}mm\" "
                + $"viewBox=\"0 0 {size.WidthMm * Pen.Mm:0.###} {size.HeightMm * Pen.Mm:0.###}\">"
                + $"<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>"
        );
        string place = string.Create(
            CultureInfo.InvariantCulture,
            $"x=\"{layout.Square.X:0.##}\" y=\"{layout.Square.Y:0.##}\" width=\"{layout.Square.Width:0.##}\" "
                + $"height=\"{layout.Square.Height:0.##}\""
        );
        svg.Append(BarCode.QrSvg(label.Code, place));
        foreach (LabelText text in layout.Texts)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<text x=\"{text.X:0.##}\" y=\"{text.Baseline:0.##}\" font-size=\"{text.Size:0.#}\" textLength=\"{text.Width:0.##}\" "
                    + $"lengthAdjust=\"spacingAndGlyphs\" font-family=\"DejaVu Sans, sans-serif\" fill=\"#000\""
            );
            svg.Append(text.Bold ? " font-weight=\"700\">" : ">").Append(E(text.Text)).Append("</text>");
        }

        return svg.Append("</svg>").ToString();
    }

    /// <summary>A whole document, one label a page; needs nothing from outside.</summary>
    public static string Document(IReadOnlyList<PieceLabel> labels, LabelSize size)
    {
        string css = string.Create(
            CultureInfo.InvariantCulture,
            $"@page {{ size: {size.WidthMm}mm {size.HeightMm}mm; margin: 0; }} body {{ margin: 0; background: #fff; }} "
                + $"svg.label {{ display: block; break-after: page; }} "
                + $"@media screen {{ svg.label {{ margin: 4mm; outline: 1px solid #777; }} }}"
        );
        return "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">"
            + $"<title>Labels {size.Words}</title><style>{css}</style></head><body><main>"
            + string.Concat(labels.Select(label => Of(label, size)))
            + "</main></body></html>";
    }
}
