using Coilwright.Papers.Figures;
using PdfSharp.Drawing;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Coilwright.Papers.Pdf;

/// <summary>Codes to scan, drawn as shapes so that they stay sharp at any size.</summary>
internal static class PdfCode
{
    /// <summary>Code 128 in a box, quiet zones included.</summary>
    public static void Bars(XGraphics page, string text, XRect box)
    {
        IReadOnlyList<bool> modules = BarCode.Modules(text);
        double module = box.Width / (modules.Count + 20);
        for (int start = 0; start < modules.Count; )
        {
            int end = start;
            while (end < modules.Count && modules[end] == modules[start])
            {
                end++;
            }

            if (modules[start])
            {
                page.DrawRectangle(XBrushes.Black, box.X + (10 + start) * module, box.Y, (end - start) * module, box.Height);
            }

            start = end;
        }
    }

    /// <summary>QR in a square box, quiet zone included; a row's neighbouring modules are one shape.</summary>
    public static void Square(XGraphics page, string text, XRect box)
    {
        BitMatrix matrix = new QRCodeWriter().encode(
            text,
            BarcodeFormat.QR_CODE,
            0,
            0,
            new Dictionary<EncodeHintType, object> { [EncodeHintType.MARGIN] = 4, [EncodeHintType.CHARACTER_SET] = "UTF-8" }
        );
        double module = box.Width / matrix.Width;
        for (int row = 0; row < matrix.Height; row++)
        {
            for (int column = 0; column < matrix.Width; column++)
            {
                int from = column;
                while (column < matrix.Width && matrix[column, row])
                {
                    column++;
                }

                if (column > from)
                {
                    page.DrawRectangle(XBrushes.Black, box.X + from * module, box.Y + row * module, (column - from) * module, module);
                }
            }
        }
    }
}
