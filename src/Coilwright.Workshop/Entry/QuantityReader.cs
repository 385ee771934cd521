namespace Coilwright.Workshop.Entry;

/// <summary>Reads quantities that a person typed for a question; every problem is gathered, none ends the reading.</summary>
/// <param name="unitRequired">True to refuse a bare number.</param>
public sealed class QuantityReader(bool unitRequired)
{
    private readonly List<Problem> _problems = [];

    /// <summary>Everything that was wrong so far.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>What was typed, in the unit of its kind; null, and for more than an empty field with a problem, when it is no such thing.
    /// </summary>
    /// <param name="field">Name of the field, for the message.</param>
    /// <param name="typed">What was typed; null or empty for nothing.</param>
    /// <param name="limits">What is allowed; its unit is that of a bare number.</param>
    public double? Read(string field, string? typed, Limits limits)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        string? customary = limits.Unit.Length > 0 ? limits.Unit : null;
        ParsedQuantity read = QuantityParser.Read(typed, limits, unitRequired, customary);
        if (!read.Entered.IsKnown)
        {
            _problems.Add(new Problem(field, $"\"{typed.Trim()}\": {read.Why}", Allowed: RangeOf(limits)) { Readings = Asked(read) });
            return null;
        }

        if (!limits.Allows(read.Entered.Si))
        {
            string echo = QuantityParser.Echo(read.Entered, limits.Kind);
            _problems.Add(new Problem(field, "outside the allowed range", echo, RangeOf(limits)));
            return null;
        }

        return read.Entered.Si;
    }

    /// <summary>One more problem.</summary>
    public void Add(Problem problem) => _problems.Add(problem);

    private static IReadOnlyList<string>? Asked(ParsedQuantity read) => read.Readings.Count > 0 ? read.Readings : null;

    private static string RangeOf(Limits limits) =>
        $"{QuantityParser.Format(limits.Min, limits.Kind)} to {QuantityParser.Format(limits.Max, limits.Kind)}";
}
