using System.Globalization;
using System.Numerics;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Csv;

namespace Coilwright.Formats.Curves;

/// <summary>Writes a measured impedance as a table, a row for each frequency.</summary>
public static class ImpedanceCsv
{
    public static string Write(MeasuredCurve curve)
    {
        CsvTable csv = new("frequency [Hz]", "real [Ω]", "imaginary [Ω]");
        foreach ((double hz, Complex ohm) in curve.FrequenciesHz.Zip(curve.ImpedanceOhm!))
        {
            csv.Add([.. ((double[])[hz, ohm.Real, ohm.Imaginary]).Select(value => value.ToString("R", CultureInfo.InvariantCulture))]);
        }

        return csv.ToString();
    }
}
