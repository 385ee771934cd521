using System.Globalization;
using Coilwright.Analysis.Originals;
using Coilwright.Papers.Words;
using Coilwright.Physics;

namespace Coilwright.Output;

/// <summary>What an original was made of, for people.</summary>
public static class PlainExplanations
{
    public static void Write(TextWriter writer, string name, OriginalAnswer answer)
    {
        writer.WriteLine(name.Length > 0 ? name : "The original");
        writer.WriteLine();
        Table table = new("wire", "probability", "turns", "95 %", "bare diameter", "fits");
        foreach (Explanation one in answer.Explanations)
        {
            table.Add($"{one.Gauge} {one.Build}", Percent(one.Probability), Count(one.Turns.Value), $"{Count(one.Turns.Low)} – {Count(one.Turns.High)}", Micro(one.BareDiameterM), one.Fits ? "yes" : "no: too thick for the bobbin");
        }

        table.Write(writer);
        foreach ((string of, IReadOnlyDictionary<string, double> shares) in answer.Shares)
        {
            writer.WriteLine($"{of}: {string.Join(", ", shares.Take(5).Select(share => $"{share.Key} {Percent(share.Value)}"))}");
        }

        if (answer.Quantities.TryGetValue("turns", out Estimate turns))
        {
            writer.WriteLine($"turns, whatever the wire: {Count(turns.Value)} ({Count(turns.Low)} – {Count(turns.High)})");
        }

        writer.WriteLine();
        writer.WriteLine("What to read next, by what it tells of the wire:");
        foreach (NextReading next in answer.NextReadings.Take(4))
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {next.InformationBits:F2} bits: {next.Words}"));
        }

        writer.WriteLine(answer.Converged ? "The sampling has settled." : "The sampling has not settled.");
        foreach (string warning in answer.Warnings)
        {
            writer.WriteLine("Note: " + warning);
        }
    }

    private static string Percent(double part) => part > 0 ? string.Create(CultureInfo.InvariantCulture, $"{part * 100:0.#} %") : "–";

    private static string Count(double turns) => Math.Round(turns, 0).ToString("#,##0", CultureInfo.InvariantCulture);

    private static string Micro(Estimate estimate) => $"{FigureWords.Value(estimate.Low, "m")} – {FigureWords.Value(estimate.High, "m")}";
}
