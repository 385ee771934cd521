using System.Globalization;
using Coilwright.Formats.Csv;

namespace Coilwright.Formats.Responses;

/// <summary>Writes responses as tables, a row for each frequency.</summary>
public static class ResponseCsv
{
    /// <summary>One response with its phase and impedance.</summary>
    public static string Write(ResponseAnswer answer)
    {
        string[] change = answer.Against is null ? [] : ["change [dB]"];
        CsvTable csv = new(["frequency [Hz]", "gain [dB]", "phase [deg]", "impedance [Ω]", .. change]);
        foreach ((int at, ResponseLine line) in answer.Lines.Index())
        {
            double[] changed = answer.Against is { } against ? [against.GainDb[at]] : [];
            double[] row = [line.FrequencyHz, line.GainDb, line.PhaseDeg, line.ImpedanceOhm, .. changed];
            csv.Add([.. row.Select(value => value.ToString("R", CultureInfo.InvariantCulture))]);
        }

        return csv.ToString();
    }

    /// <summary>Gains side by side, a column each; nothing where a measured curve does not reach.</summary>
    /// <param name="frequencyHz">Common frequencies.</param>
    /// <param name="curves">The curves with their names.</param>
    public static string Write(IReadOnlyList<double> frequencyHz, IReadOnlyList<(string Name, IReadOnlyList<double?> GainDb)> curves)
    {
        CsvTable csv = new(["frequency [Hz]", .. curves.Select(curve => $"gain {curve.Name} [dB]")]);
        foreach ((int at, double hz) in frequencyHz.Index())
        {
            IEnumerable<string> gains = curves.Select(curve => curve.GainDb[at]?.ToString("F4", CultureInfo.InvariantCulture) ?? "");
            csv.Add([hz.ToString("G7", CultureInfo.InvariantCulture), .. gains]);
        }

        return csv.ToString();
    }
}
