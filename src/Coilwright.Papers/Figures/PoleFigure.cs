using System.Globalization;

namespace Coilwright.Papers.Figures;

/// <summary>The field over every pole of one piece or of several.</summary>
public static class PoleFigure
{
    /// <summary>The figure; a pole the wrong way round is a cross with its name, any other a ring.</summary>
    /// <param name="pieces">Serial, field over each pole in T and the numbers of the poles that are reversed.</param>
    /// <param name="jig">Distance of the probe, in words.</param>
    public static string Svg(IReadOnlyList<(string Serial, IReadOnlyList<double> PolesT, IReadOnlyList<int> Reversed)> pieces, string jig)
    {
        int most = pieces.Max(piece => piece.PolesT.Count);
        PlotSheet sheet = new(
            "poles-" + string.Concat(jig.Where(char.IsAsciiLetterOrDigit)),
            new PlotAxis(0.5, most + 0.5, "Pole, by its number", [.. Enumerable.Range(1, most).Select(pole => (double)pole)]),
            PlotAxis.Round(pieces.SelectMany(piece => piece.PolesT.Select(Gauss)), $"Field at {jig}, G", withZero: false)
        );
        foreach ((string serial, IReadOnlyList<double> polesT, IReadOnlyList<int> reversed) in pieces)
        {
            for (int pole = 1; pole <= polesT.Count; pole++)
            {
                bool wrong = reversed.Contains(pole);
                double gauss = Gauss(polesT[pole - 1]);
                sheet.Signal(pole, gauss, wrong ? 4 : 3, "", Words(serial, pole, gauss, wrong), small: !wrong);
                if (wrong)
                {
                    sheet.Label(pole, gauss, $"{serial}, reversed", (pole > most / 2 ? -12 : 12, 5), pole > most / 2 ? "end" : "start");
                }
            }
        }

        return sheet.Svg("poles", "Field over each pole", "The table has the numbers.");
    }

    private static double Gauss(double tesla) => 1e4 * tesla;

    private static string Words(string serial, int pole, double gauss, bool wrong) =>
        string.Create(CultureInfo.InvariantCulture, $"{serial}, pole {pole}: {gauss:0} G{(wrong ? ", reversed" : "")}");
}
