using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;
using Coilwright.Workshop.Solving;

namespace Coilwright.Output;

/// <summary>Solutions for people: the ranked recipes, the trade-off, and when nothing meets the wants, what stands in the way.</summary>
public static class SolutionFormatter
{
    public static void Write(TextWriter writer, string name, string loadWords, Solutions answer)
    {
        writer.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{name}: {answer.Searched} windings looked at; loaded peak on {loadWords}")
        );
        if (answer.Stopped)
        {
            writer.WriteLine("Stopped: the best of what was looked at by then; there may be better ones.");
        }

        writer.WriteLine();
        writer.WriteLine(
            answer.Met
                ? "These meet what is wanted, the best first:"
                : $"Cannot be met; what stands in the way: {string.Join(", ", answer.Binding.Select(FigureFormatter.Name))}. The nearest:"
        );
        WriteTable(writer, answer.Ranked);
        if (answer.Front.Count > 1)
        {
            writer.WriteLine();
            IEnumerable<string> axes = answer.Axes.Select(axis =>
                FigureFormatter.Name(axis.Quantity) + (axis.Most ? " (more is better)" : " (less is better)")
            );
            writer.WriteLine($"The trade-off of {string.Join(" against ", axes)}:");
            WriteTable(writer, answer.Front);
        }

        foreach (string note in answer.Notes)
        {
            writer.WriteLine("Note: " + note);
        }
    }

    private static void WriteTable(TextWriter writer, IReadOnlyList<Solution> solutions)
    {
        IReadOnlyList<(string Name, string Unit)> columns = SolutionColumns.For(solutions);
        Table table = new(["change", .. columns.Select(column => FigureFormatter.Name(column.Name)), "misses"]);
        foreach (Solution solution in solutions)
        {
            table.Add([
                string.Join(", ", solution.Changes.Select(change => $"{change.Key} {Told(change.Value)}")),
                .. columns.Select(column =>
                    solution.Prediction.Named.TryGetValue(column.Name, out NamedFigure? figure)
                        ? FigureFormatter.Value(figure.Estimate.Value, column.Unit, 4) + Half(figure)
                        : "–"
                ),
                solution.Missed.Count == 0 ? "–" : string.Join(", ", solution.Missed.Select(FigureFormatter.Name)),
            ]);
        }

        table.Write(writer);
    }

    /// <summary>Half the 95 % interval behind the value: in decibels for a level, as a part of it for the rest.</summary>
    private static string Half(NamedFigure figure)
    {
        double half = (figure.Estimate.High - figure.Estimate.Low) / 2;
        if (!double.IsFinite(half) || figure.Estimate.IsExact)
        {
            return "";
        }

        return figure.Unit == "dB"
            ? string.Create(CultureInfo.InvariantCulture, $" ±{half:0.0}")
            : string.Create(CultureInfo.InvariantCulture, $" ±{100 * half / Math.Abs(figure.Estimate.Value):0.#} %");
    }

    private static string Told(object value) =>
        value switch
        {
            int count => count.ToString(CultureInfo.InvariantCulture),
            IEnumerable<int> counts => string.Join("/", counts.Select(count => count.ToString(CultureInfo.InvariantCulture))),
            _ => value.ToString() ?? "",
        };
}
