using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Exports;

/// <summary>Gathers every problem of an import, each with its file, line and field.</summary>
public sealed class ImportProblems
{
    /// <summary>Problems that are told; a file that is wrong in every line is no better known by more.</summary>
    public const int Most = 200;

    private readonly List<Problem> _problems = [];
    private readonly HashSet<string> _notes = new(StringComparer.Ordinal);

    /// <summary>How many there are, told or not.</summary>
    public long Count { get; private set; }

    /// <summary>What is no fault and worth knowing.</summary>
    public IReadOnlyCollection<string> Notes => _notes;

    /// <summary>The problems, and how many more there are.</summary>
    public IReadOnlyList<Problem> All =>
        Count > _problems.Count
            ? [.. _problems, new Problem("", string.Create(CultureInfo.InvariantCulture, $"and {Count - _problems.Count:#,##0} more"))]
            : _problems;

    /// <summary>Adds one.</summary>
    /// <param name="file">The file.</param>
    /// <param name="line">Its line from 1; 0 for the whole file.</param>
    /// <param name="column">The column; empty for the whole line.</param>
    /// <param name="message">What is wrong.</param>
    /// <param name="understood">How it was read; null for nothing.</param>
    /// <param name="allowed">What is allowed; null for nothing to say.</param>
    public void Add(string file, long line, string column, string message, string? understood = null, string? allowed = null)
    {
        Count++;
        if (_problems.Count < Most)
        {
            string at = line > 0 ? string.Create(CultureInfo.InvariantCulture, $"{file} line {line}") : file;
            _problems.Add(new Problem(column.Length > 0 ? $"{at}, {column}" : at, message, understood, allowed));
        }
    }

    /// <summary>Adds a sentence for the person.</summary>
    public void Note(string sentence) => _notes.Add(sentence);
}
