using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>Writes problems for people: one line each, with field path, what is wrong, what was understood, what is allowed.</summary>
public static class ProblemFormatter
{
    public static void Write(TextWriter writer, string? source, IReadOnlyList<Problem> problems)
    {
        string count =
            problems.Count == 1
                ? "1 problem"
                : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{problems.Count} problems");
        writer.WriteLine(string.IsNullOrEmpty(source) ? $"coilwright: {count}" : $"coilwright: {count} in {source}");
        foreach (Problem problem in problems)
        {
            writer.WriteLine("  " + Line(problem));
        }
    }

    /// <summary>One problem as one line.</summary>
    public static string Line(Problem problem)
    {
        string line = problem.Field.Length == 0 ? problem.Message : $"{problem.Field}: {problem.Message}";
        line += problem.Understood is { Length: > 0 } understood ? $"; understood: {understood}" : "";
        return line + (problem.Allowed is { Length: > 0 } allowed ? $"; allowed: {allowed}" : "");
    }
}
