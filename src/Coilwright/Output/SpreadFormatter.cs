using System.Globalization;
using Coilwright.Analysis.Spread;
using Coilwright.Papers.Formatting;

namespace Coilwright.Output;

/// <summary>A run's spread for people: each quantity with its limits and causes, then what would narrow it.</summary>
public static class SpreadFormatter
{
    public static void Write(TextWriter writer, string name, string loadWords, RunSpread run)
    {
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {run.Samples} pieces drawn, seed {run.Seed}"));
        writer.WriteLine("Loaded peak on: " + loadWords);
        if (run.Stopped)
        {
            writer.WriteLine("Stopped: the pieces drawn by then; their causes and what would narrow them were not reached.");
        }

        writer.WriteLine();
        Table table = new("quantity", "mean", "standard deviation", "within one run", "95 % of pieces", "outside target", "mostly from");
        foreach (QuantitySpread quantity in run.Quantities.Where(quantity => quantity.StandardDeviation > 0))
        {
            string Value(double value) => FigureFormatter.Value(value, quantity.Unit);
            table.Add(
                FigureFormatter.Name(quantity.Name),
                Value(quantity.Mean),
                Value(quantity.StandardDeviation),
                double.IsFinite(quantity.WithinRun) ? Value(quantity.WithinRun) : "–",
                $"{Value(quantity.Low)} – {Value(quantity.High)}",
                quantity.OutsideTarget is { } outside ? Percent(outside) : "–",
                string.Join(", ", quantity.Causes.Take(3).Select(cause => $"{ScatterFormatter.Of(cause.Cause)} {Percent(cause.Total)}"))
            );
        }

        table.Write(writer);
        writer.WriteLine();
        writer.WriteLine("What would change it (standard deviation, part outside the target):");
        foreach (SpreadRemedy remedy in run.Remedies)
        {
            writer.WriteLine($"  {remedy.Words}");
            foreach (QuantitySpread quantity in run.Quantities.Where(quantity => Changes(quantity, remedy)).Take(4))
            {
                string outside = remedy.OutsideTarget.TryGetValue(quantity.Name, out double then)
                    ? $", outside {Percent(quantity.OutsideTarget ?? 0)} → {Percent(then)}"
                    : "";
                writer.WriteLine(
                    $"    {FigureFormatter.Name(quantity.Name)}: {FigureFormatter.Value(quantity.StandardDeviation, quantity.Unit)} → "
                        + $"{FigureFormatter.Value(remedy.StandardDeviation[quantity.Name], quantity.Unit)}{outside}"
                );
            }
        }

        writer.WriteLine();
        IEnumerable<string> off = run.FieldCheck.Quantities.Select(line =>
            string.Create(CultureInfo.InvariantCulture, $"{line.Largest * 100:0.##} % in {FigureFormatter.Name(line.Name)}")
        );
        writer.WriteLine(
            $"Of the pieces drawn, {run.FieldCheck.Samples} were solved in full; the model about one solution was off by at most "
                + $"{string.Join(", ", off)}."
        );
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Inductances follow scaling laws about one field solution; at the edge of the draw they are within "
                    + $"{run.FieldModelError * 100:F2} % of a full one."
            )
        );
    }

    private static bool Changes(QuantitySpread quantity, SpreadRemedy remedy) =>
        quantity.StandardDeviation > 0 && Math.Abs(remedy.StandardDeviation[quantity.Name] / quantity.StandardDeviation - 1) > 0.1;

    private static string Percent(double part) => string.Create(CultureInfo.InvariantCulture, $"{part * 100:0.#} %");
}
