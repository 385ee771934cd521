namespace Coilwright.Workshop.Entry;

/// <summary>Gathers every problem of one entry.</summary>
public sealed class ProblemList
{
    private readonly List<Problem> _problems = [];

    /// <summary>True for a file: there a comma is refused, since the point alone is decimal.</summary>
    public bool PointOnly { get; init; }

    public IReadOnlyList<Problem> All => _problems;

    public void Add(string field, string message, string? understood = null, string? allowed = null) =>
        _problems.Add(new Problem(field, message, understood, allowed));
}
